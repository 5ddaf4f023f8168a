"""From a located tree to plain values by shape, collecting every problem of form on the way.

What is missing or malformed is left out of the values; the problem says so.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean, nearest
from chamberwise.engine.diagnostics.problem import Pointer, Span
from chamberwise.engine.reading import codes, tree
from chamberwise.engine.reading.characters import in_short
from chamberwise.engine.reading.scalars import Typed, UntypedError, typed
from chamberwise.engine.reading.shapes import (
    NAME,
    Anything,
    Either,
    Entries,
    Items,
    Key,
    Kind,
    Kinds,
    OneOrMore,
    Record,
    Scalar,
    Shape,
)

_SAID = {tree.Scalar: "a text", tree.Listing: "a list", tree.Table: "a mapping"}


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
            self._wrong_kind(node, "one text", at)
            return None
        if shape.kind is Kind.TEXT and not node.quoted:
            self._cut_short(node, at)
        try:
            return typed(node.text, shape)
        except UntypedError as refusal:
            where = f"`{at[-1]}`" if at and isinstance(at[-1], str) else "this item"
            shown = f", not `{in_short(node.text)}`" if node.text.strip() else ""
            message = f"{where} takes {refusal.expected}{shown}"
            self._report(codes.WRONG_VALUE, at, node.span, message, refusal.advice)
            return None

    def _cut_short(self, node: tree.Scalar, at: Pointer) -> None:
        line, column = node.span.end_line, node.span.end_column
        lines = self.source.source(at).lines
        rest = lines[line - 1][column - 1 :] if line <= len(lines) else ""
        if rest.lstrip().startswith("#") and rest[:1].isspace():
            message = f"the text ends before `{in_short(rest.strip())}`"
            advice = "Put the whole text in quotes, or a remark on a line of its own."
            span = Span(line, column, line, column + len(rest))
            self._report(codes.TEXT_CUT, at, span, message, advice)

    def _record(self, node: tree.Node, shape: Record, at: Pointer) -> dict[str, Any] | None:
        if not isinstance(node, tree.Table):
            text = in_short(node.text) if isinstance(node, tree.Scalar) else ""
            advice = f"Write `{{{shape.told_by}: {text}}}`." if text and shape.told_by else ""
            self._wrong_kind(node, f"the keys of {shape.name}", at, advice)
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
        otherwise = f"{_a(shape.name)} takes {listed}."
        advice = _slip(entry) or did_you_mean(entry.key.text, shape.keys, otherwise)
        message = f"`{in_short(entry.key.text)}` is no key of {shape.name}"
        where = (*at, entry.key.text)
        self._report(codes.UNKNOWN_KEY, where, entry.key.span, message, advice)

    def _missing_keys(self, node: tree.Table, shape: Record, at: Pointer) -> None:
        for name, key in shape.keys.items():
            if key.required and name not in node.entries:
                self._missing(f"{shape.name} has no `{name}`", _add(name, key), at)
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
            message = f"`{name}` stands only beside {_or(others)}"
            advice = f"Delete `{name}`, or write {shape.name} of another kind."
            self._report(
                codes.UNKNOWN_KEY, (*at, name), node.entries[name].key.span, message, advice
            )

    def _alone(self, found: str, absent: str, shape: Record, at: Pointer) -> None:
        message = f"`{found}` without `{absent}`"
        self._missing(message, _add(absent, shape.keys[absent]), at)

    def _exactly_one(self, node: tree.Table, shape: Record, at: Pointer) -> None:
        found = [name for name in shape.exactly_one if name in node.entries]
        if len(found) == 1:
            return
        listed = _or(shape.exactly_one)
        if not found:
            self._missing(f"{shape.name} has no {listed}", f"Write one of {listed}.", at)
            return
        message = f"{' and '.join(f'`{name}`' for name in found)} in one place"
        span = node.entries[found[1]].key.span
        advice = f"Keep one, and make a second entry for the other, {shape.name} each."
        self._report(codes.UNKNOWN_KEY, (*at, found[1]), span, message, advice)

    def _missing(self, message: str, advice: str, at: Pointer) -> None:
        span = self.source.span(at, at_key=True)
        self._report(codes.MISSING_KEY, at, span, message, advice)

    def _entries(self, node: tree.Node, shape: Entries, at: Pointer) -> dict[str, Any] | None:
        if not isinstance(node, tree.Table):
            self._wrong_kind(node, "names, each with its own text below", at)
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
            message = f"`{in_short(key.text)}` is not {refusal.expected}"
            meant = nearest(key.text.lower().replace("-", " "), words)
            advice = f"Write `{meant}`." if meant else refusal.advice
            self._report(codes.WRONG_VALUE, at, key.span, message, advice)

    def _items(self, node: tree.Node, shape: Items, at: Pointer) -> tuple[Any, ...] | None:
        if not isinstance(node, tree.Listing):
            one = in_short(node.text) if isinstance(node, tree.Scalar) and node.text else ""
            self._wrong_kind(node, "a list", at, f"Write `[{one}]`." if one else "")
            return None
        read = [self._read(item, shape.of, (*at, place)) for place, item in enumerate(node.items)]
        self._fewest(len(read), shape.fewest, node, at)
        return tuple(read)

    def _fewest(self, count: int, fewest: int, node: tree.Node, at: Pointer) -> None:
        if count < fewest:
            message = f"nothing stands in {_where(at)}" if count == 0 else f"only {count} here"
            advice = f"Write at least {fewest}, or delete the key."
            self._report(codes.WRONG_VALUE, at, node.span, message, advice)

    def _kinds(self, node: tree.Node, shape: Kinds, at: Pointer) -> dict[str, Any] | None:
        if not isinstance(node, tree.Table):
            self._wrong_kind(node, f"the keys of {shape.name}", at)
            return None
        found = [name for name in shape.by_key if name in node.entries]
        if len(found) == 1:
            return self._record(node, shape.by_key[found[0]], at)
        if found:
            both = " and ".join(f"`{name}`" for name in found)
            one = shape.name.partition(" ")[2]
            self._no_kind(f"{both} in one {one}", f"Make two {one}s of it.", shape, at)
            return None
        listed = ", ".join(f"`{name}`" for name in shape.by_key)
        meant = _misspelt(node, shape)
        if meant:
            message = f"`{in_short(meant.text)}` is no key of {shape.name}"
            advice = did_you_mean(meant.text, shape.by_key, f"Write one of {listed}.")
            self._report(codes.UNKNOWN_KEY, (*at, meant.text), meant.span, message, advice)
        else:
            found_none = f"the {shape.name.partition(' ')[2]} has none of {listed}"
            self._no_kind(found_none, f"Write one of {listed}.", shape, at)
        return None

    def _no_kind(self, message: str, advice: str, shape: Kinds, at: Pointer) -> None:
        code = codes.STEP_KIND if shape.name == "a step" else codes.WRONG_KIND
        self._report(code, at, self.source.span(at, at_key=True), message, advice)

    def _wrong_kind(self, node: tree.Node, due: str, at: Pointer, instead: str = "") -> None:
        found = _SAID[type(node)]
        if isinstance(node, tree.Scalar) and not node.text and not node.quoted:
            found = "nothing"
        message = f"{_where(at)} takes {due}, and {found} stands here"
        advice = instead or "Compare with the examples in protocols/README.md."
        self._report(codes.WRONG_KIND, at, node.span, message, advice)

    def _report(self, code: Code, at: Pointer, span: Span | None, what: str, advice: str) -> None:
        self.source.report(code.at(self.source.source(at).file, at, span, what, advice))


def _misspelt(node: tree.Table, shape: Kinds) -> tree.Scalar | None:
    """Return the key that was most likely meant to tell the kind: the nearest or the only one."""
    known = {name for record in shape.by_key.values() for name in record.keys}
    keys = [entry.key for name, entry in node.entries.items() if name not in known]
    near = next((key for key in keys if nearest(key.text, shape.by_key)), None)
    return keys[0] if len(keys) == 1 else near


def _slip(entry: tree.Entry) -> str:
    """Return what most likely went wrong where a piece of a sentence stands as a key."""
    text = entry.key.text
    is_bare = isinstance(entry.value, tree.Scalar) and not entry.value.text
    if is_bare and ":" in text:
        before, after = text.split(":", 1)
        return f"Put a space after the colon: `{in_short(before)}: {in_short(after.strip())}`."
    if is_bare and (" " in text or text.endswith(".")):
        return "A comma between { and } cuts a text in two. Put the whole text in quotes."
    return ""


def _add(name: str, key: Key) -> str:
    return f"Add `{name}:`, {key.doc[0].lower()}{key.doc[1:]}."


def _where(at: Pointer) -> str:
    return f"`{at[-1]}`" if at and isinstance(at[-1], str) else "this place"


def _or(names: Iterable[str]) -> str:
    return " or ".join(f"`{name}`" for name in names)


def _a(name: str) -> str:
    return name[0].upper() + name[1:]
