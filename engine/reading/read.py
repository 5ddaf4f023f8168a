"""From a located tree to plain values by shape, collecting every problem of form on the way.

What is missing or malformed is left out of the values; the problem says so.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean, nearest
from chamberwise.engine.diagnostics.problem import Pointer, Span
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import codes, tree
from chamberwise.engine.reading.characters import in_short
from chamberwise.engine.reading.saying import (
    at_the_start,
    both_and,
    key_at,
    no_key,
    one_or,
    slip,
    to_add,
)
from chamberwise.engine.reading.scalars import Typed, UntypedError, typed
from chamberwise.engine.reading.shapes import (
    NAME,
    Anything,
    Either,
    Entries,
    Items,
    Kind,
    Kinds,
    OneOrMore,
    Record,
    Scalar,
    Shape,
)

_SAID = {tree.Scalar: N_("a text"), tree.Listing: N_("a list"), tree.Table: N_("a mapping")}


def read(source: tree.Tree, shape: Shape) -> Any:
    """Return the values of a whole file by shape, `None` where nothing could be read."""
    if source.root is None:
        return None
    try:
        return _Reading(source)._read(source.root, shape, ())
    except tree.EnoughError as enough:
        source.problems.append(enough.problem)
        return None


@dataclass(slots=True)
class _Reading:
    source: tree.Tree

    def _read(self, node: tree.Node, shape: Shape, at: Pointer) -> Any:
        match shape:
            case Scalar():
                return self._scalar(node, shape, at)
            case Record():
                return self._record(node, shape, at)
            case Entries():
                return self._entries(node, shape, at)
            case Items():
                return self._items(node, shape, at)
            case Either():
                short = isinstance(node, tree.Scalar)
                return self._read(node, shape.short if short else shape.long, at)
            case OneOrMore():
                several = isinstance(node, tree.Listing)
                return self._read(node, Items(shape.of) if several else shape.of, at)
            case Kinds():
                return self._kinds(node, shape, at)
            case Anything():
                return node

    def _scalar(self, node: tree.Node, shape: Scalar, at: Pointer) -> Typed | None:
        if not isinstance(node, tree.Scalar):
            self._wrong_kind(node, _("one text"), at)
            return None
        if shape.kind is Kind.TEXT and not node.quoted:
            self._cut_short(node, at)
        try:
            return typed(node.text, shape)
        except UntypedError as refusal:
            where = f"`{at[-1]}`" if at and isinstance(at[-1], str) else _("this item")
            message = _("{where} takes {expected}")
            if node.text.strip():
                message = _("{where} takes {expected}, not `{text}`")
            message = message.format(
                where=where, expected=refusal.expected, text=in_short(node.text)
            )
            self._report(codes.WRONG_VALUE, at, node.span, message, refusal.advice)
            return None

    def _cut_short(self, node: tree.Scalar, at: Pointer) -> None:
        line, column = node.span.end_line, node.span.end_column
        lines = self.source.source(at).lines
        rest = lines[line - 1][column - 1 :] if line <= len(lines) else ""
        if rest.lstrip().startswith("#") and rest[:1].isspace():
            message = _("the text ends before `{rest}`").format(rest=in_short(rest.strip()))
            advice = _("Put the whole text in quotes, or a remark on a line of its own.")
            span = Span(line, column, line, column + len(rest))
            self._report(codes.TEXT_CUT, at, span, message, advice)

    def _record(self, node: tree.Node, shape: Record, at: Pointer) -> dict[str, Any] | None:
        if not isinstance(node, tree.Table):
            text = in_short(node.text) if isinstance(node, tree.Scalar) else ""
            by = shape.told_by
            advice = _("Write `{text}`.").format(text=f"{{{by}: {text}}}") if text and by else ""
            self._wrong_kind(node, _("the keys of {name}").format(name=_(shape.name)), at, advice)
            return None
        values: dict[str, Any] = {}
        for text, entry in node.entries.items():
            key = shape.keys.get(text)
            if key is None:
                self._unknown_key(entry, shape, at)
                continue
            value = self._read(entry.value, key.shape, (*at, text))
            if value is not None:
                values[text] = value
        self._fewest(len(node.entries), shape.fewest, node, at)
        self._missing_keys(node, shape, at)
        return values

    def _unknown_key(self, entry: tree.Entry, shape: Record, at: Pointer) -> None:
        listed = ", ".join(f"`{key}`" for key in shape.keys)
        name = _(shape.name)
        otherwise = _("{name} takes {listed}.").format(name=at_the_start(name), listed=listed)
        advice = slip(entry) or did_you_mean(entry.key.text, shape.keys, otherwise)
        message = no_key(entry.key.text, name)
        where = (*at, entry.key.text)
        self._report(codes.UNKNOWN_KEY, where, entry.key.span, message, advice)

    def _missing_keys(self, node: tree.Table, shape: Record, at: Pointer) -> None:
        for name, key in shape.keys.items():
            if key.required and name not in node.entries:
                message = _("{name} has no `{key}`").format(name=_(shape.name), key=name)
                self._missing(message, to_add(name, key), at)
        if shape.exactly_one:
            self._exactly_one(node, shape, at)
        found = [name for name in shape.together if name in node.entries]
        if found and len(found) < len(shape.together):
            absent = next(name for name in shape.together if name not in node.entries)
            self._alone(found[0], absent, shape, at)
        if not shape.exactly_one or any(name in node.entries for name in shape.exactly_one):
            self._only_with(node, shape, at)

    def _only_with(self, node: tree.Table, shape: Record, at: Pointer) -> None:
        for name, others in shape.only_with.items():
            if name not in node.entries or any(other in node.entries for other in others):
                continue
            if len(others) == 1:
                self._alone(name, others[0], shape, at)
                continue
            message = _("`{key}` stands only beside {others}").format(
                key=name, others=one_or(others)
            )
            advice = _("Delete `{key}`, or write {name} of another kind.").format(
                key=name, name=_(shape.name)
            )
            self._report(
                codes.UNKNOWN_KEY, (*at, name), node.entries[name].key.span, message, advice
            )

    def _alone(self, found: str, absent: str, shape: Record, at: Pointer) -> None:
        message = _("`{found}` without `{absent}`").format(found=found, absent=absent)
        self._missing(message, to_add(absent, shape.keys[absent]), at)

    def _exactly_one(self, node: tree.Table, shape: Record, at: Pointer) -> None:
        found = [name for name in shape.exactly_one if name in node.entries]
        if len(found) == 1:
            return
        listed = one_or(shape.exactly_one)
        if not found:
            self._missing(
                _("{name} has no {listed}").format(name=_(shape.name), listed=listed),
                _("Write one of {listed}.").format(listed=listed),
                at,
            )
            return
        message = _("{both} in one place").format(both=both_and(found))
        span = node.entries[found[1]].key.span
        advice = _("Keep one, and make a second entry for the other, {name} each.").format(
            name=_(shape.name)
        )
        self._report(codes.UNKNOWN_KEY, (*at, found[1]), span, message, advice)

    def _missing(self, message: str, advice: str, at: Pointer) -> None:
        span = self.source.span(at, at_key=True)
        self._report(codes.MISSING_KEY, at, span, message, advice)

    def _entries(self, node: tree.Node, shape: Entries, at: Pointer) -> dict[str, Any] | None:
        if not isinstance(node, tree.Table):
            self._wrong_kind(node, _("names, each with its own text below"), at)
            return None
        values: dict[str, Any] = {}
        for text, entry in node.entries.items():
            if text not in shape.words:
                self._name(entry.key, shape.words, (*at, text))
            value = self._read(entry.value, shape.of, (*at, text))
            if value is not None:
                values[text] = value
        self._fewest(len(node.entries), shape.fewest, node, at)
        return values

    def _name(self, key: tree.Scalar, words: tuple[str, ...], at: Pointer) -> None:
        try:
            typed(key.text, NAME)
        except UntypedError as refusal:
            message = _("`{text}` is not {expected}").format(
                text=in_short(key.text), expected=refusal.expected
            )
            meant = nearest(key.text.lower().replace("-", " "), words)
            advice = _("Write `{meant}`.").format(meant=meant) if meant else refusal.advice
            self._report(codes.WRONG_VALUE, at, key.span, message, advice)

    def _items(self, node: tree.Node, shape: Items, at: Pointer) -> tuple[Any, ...] | None:
        if not isinstance(node, tree.Listing):
            one = in_short(node.text) if isinstance(node, tree.Scalar) and node.text else ""
            self._wrong_kind(
                node, _("a list"), at, _("Write `[{one}]`.").format(one=one) if one else ""
            )
            return None
        read = [self._read(item, shape.of, (*at, place)) for place, item in enumerate(node.items)]
        self._fewest(len(read), shape.fewest, node, at)
        return tuple(read)

    def _fewest(self, count: int, fewest: int, node: tree.Node, at: Pointer) -> None:
        if count < fewest:
            nothing, few = _("nothing stands in {where}"), _("only {count} here")
            message = few.format(count=count) if count else nothing.format(where=key_at(at))
            advice = _("Write at least {fewest}, or delete the key.").format(fewest=fewest)
            self._report(codes.WRONG_VALUE, at, node.span, message, advice)

    def _kinds(self, node: tree.Node, shape: Kinds, at: Pointer) -> dict[str, Any] | None:
        if not isinstance(node, tree.Table):
            self._wrong_kind(node, _("the keys of {name}").format(name=_(shape.name)), at)
            return None
        found = [name for name in shape.by_key if name in node.entries]
        if len(found) == 1:
            return self._record(node, shape.by_key[found[0]], at)
        if found:
            message = _("{both} in one {one}").format(both=both_and(found), one=_(shape.noun))
            advice = _("Make two {one}s of it.").format(one=_(shape.noun))
            self._no_kind(message, advice, shape, at)
            return None
        listed = ", ".join(f"`{name}`" for name in shape.by_key)
        otherwise = _("Write one of {listed}.").format(listed=listed)
        meant = _misspelt(node, shape)
        if meant:
            message = no_key(meant.text, _(shape.name))
            advice = did_you_mean(meant.text, shape.by_key, otherwise)
            self._report(codes.UNKNOWN_KEY, (*at, meant.text), meant.span, message, advice)
        else:
            message = _("the {one} has none of {listed}").format(one=_(shape.noun), listed=listed)
            self._no_kind(message, otherwise, shape, at)
        return None

    def _no_kind(self, message: str, advice: str, shape: Kinds, at: Pointer) -> None:
        code = codes.STEP_KIND if shape.name == "a step" else codes.WRONG_KIND
        self._report(code, at, self.source.span(at, at_key=True), message, advice)

    def _wrong_kind(self, node: tree.Node, due: str, at: Pointer, instead: str = "") -> None:
        found = _(_SAID[type(node)])
        if isinstance(node, tree.Scalar) and not node.text and not node.quoted:
            found = _("nothing")
        message = _("{where} takes {due}, and {found} stands here").format(
            where=key_at(at), due=due, found=found
        )
        advice = instead or _("Compare with the examples in protocols/README.md.")
        self._report(codes.WRONG_KIND, at, node.span, message, advice)

    def _report(self, code: Code, at: Pointer, span: Span | None, what: str, advice: str) -> None:
        self.source.report(code.at(self.source.source(at).file, at, span, what, advice))


def _misspelt(node: tree.Table, shape: Kinds) -> tree.Scalar | None:
    """Return the key that was most likely meant to tell the kind: the nearest or the only one."""
    known = {name for record in shape.by_key.values() for name in record.keys}
    keys = [entry.key for name, entry in node.entries.items() if name not in known]
    near = next((key for key in keys if nearest(key.text, shape.by_key)), None)
    return keys[0] if len(keys) == 1 else near
