"""From text to a located tree: every scalar stays text, every place is kept, and limits hold.

Knows YAML, not pathways. Built straight from parse events, so that an alias is refused when it is
met and no depth of nesting can exhaust the interpreter's stack.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, TypeAlias

import yaml
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Span
from chamberwise.engine.language.numbers import thousands
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import codes
from chamberwise.engine.reading.characters import first_hidden, in_short, without_hidden
from chamberwise.engine.reading.yaml_error import told

DEEPEST = 32
MOST_NODES = 400_000
"""Twice what ten thousand steps need; so many are read within 500 MB."""
MOST_PROBLEMS = 1000
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@dataclass(slots=True)
class Scalar:
    """A piece of text. `quoted` tells `""` from nothing at all."""

    text: str
    span: Span
    quoted: bool = False


@dataclass(slots=True)
class Listing:
    """A list of nodes."""

    items: list[Node]
    span: Span


@dataclass(slots=True)
class Entry:
    """One key of a mapping with its value."""

    key: Scalar
    value: Node


@dataclass(slots=True)
class Table:
    """A mapping in document order; the first of two equal keys is kept, the second reported."""

    entries: dict[str, Entry]
    span: Span


Node: TypeAlias = Scalar | Listing | Table


@dataclass(slots=True)
class Tree:
    """One file's tree, or no root where it could not be read; `problems` says why.

    `grafts` names the trees from which nodes were put in, by place: their spans are theirs.
    """

    file: str
    root: Node | None
    problems: list[Problem] = field(default_factory=list)
    lines: list[str] = field(default_factory=list)
    grafts: dict[Pointer, Tree] = field(default_factory=dict)

    def source(self, pointer: Pointer) -> Tree:
        """Return the tree that what stands at a place was written in."""
        if self.grafts:
            for length in range(len(pointer), 0, -1):
                if found := self.grafts.get(pointer[:length]):
                    return found
        return self

    def report(self, problem: Problem) -> None:
        """Keep a problem. Raises `EnoughError` when there are so many that reading on is vain."""
        self.problems.append(problem)
        if len(self.problems) == MOST_PROBLEMS:
            message = _("{count} problems up to here; the rest is not listed").format(
                count=thousands(MOST_PROBLEMS)
            )
            advice = _("Put the first one right, and look whether the others go with it.")
            last = codes.TOO_MANY.at(self.file, (), problem.span, message, advice)
            raise EnoughError(last)

    def span(self, pointer: Pointer, *, at_key: bool = False) -> Span | None:
        """Return where a pointer leads; the nearest place above it when it leads nowhere.

        The one item of a list is also found as if it stood there alone.
        """
        node, key = self.root, None
        for part in pointer:
            if isinstance(part, str) and isinstance(node, Listing) and len(node.items) == 1:
                node = node.items[0]
            following: Node | None = None
            if isinstance(node, Table) and part in node.entries:
                entry = node.entries[str(part)]
                key, following = entry.key, entry.value
            elif isinstance(node, Listing) and isinstance(part, int) and part < len(node.items):
                key, following = None, node.items[part]
            if following is None:
                return key.span if key and not isinstance(node, Scalar) else _head(node)
            node = following
        if key and (at_key or not isinstance(node, Scalar)):
            return key.span
        return _head(node)


def _head(node: Node | None) -> Span | None:
    if isinstance(node, Table) and node.entries:
        return next(iter(node.entries.values())).key.span
    if isinstance(node, Listing) and node.items:
        return _head(node.items[0])
    return node.span if node else None


class EnoughError(Exception):
    """Reading stops here; `problem` says why."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


def parse(text: str, file: str) -> Tree:
    """Return the tree of one YAML text. Never raises for any text."""
    tree = Tree(file, None, lines=text.splitlines())
    try:
        _refuse_at_sight(text, tree)
        tree.root = _build(yaml.parse(text, Loader=_LOADER), tree)
    except EnoughError as enough:
        tree.root = None
        tree.problems.append(enough.problem)
    except yaml.MarkedYAMLError as error:
        tree.problems.append(told(error, text, file))
    except (yaml.YAMLError, ValueError, RecursionError) as error:
        message = _("cannot be read as YAML ({error})").format(error=type(error).__name__)
        advice = _("Look for brackets or quotes that are never closed.")
        tree.problems.append(codes.SYNTAX.at(file, (), None, message, advice))
    if tree.root is None and not tree.problems:
        advice = _("Start from `chamberwise new ID`.")
        tree.problems.append(codes.EMPTY.at(file, (), None, _("the file is empty"), advice))
    return tree


@dataclass(slots=True)
class _Open:
    node: Listing | Table
    at: Pointer
    key: Scalar | None = None
    repeated: bool = False

    def next_place(self) -> Pointer:
        """Return where the node to come will stand; a key stands where its mapping does."""
        if isinstance(self.node, Listing):
            return (*self.at, len(self.node.items))
        return self.at if self.key is None else (*self.at, self.key.text)


def _build(events: Iterator[Any], tree: Tree) -> Node | None:
    root: Node | None = None
    documents = nodes = 0
    open_nodes: list[_Open] = []
    for event in events:
        if isinstance(event, yaml.NodeEvent):
            nodes += 1
            if nodes > MOST_NODES or event.anchor or getattr(event, "tag", None) is not None:
                _refuse_indirection(event, tree)
                _refuse_more(event, nodes, tree)
            inside = open_nodes[-1] if open_nodes else None
            node: Node
            if isinstance(event, yaml.ScalarEvent):
                text = event.value if event.value.isprintable() else _shown(event, inside, tree)
                node = Scalar(text, _span(event), not event.implicit[0])
            else:
                is_list = isinstance(event, yaml.SequenceStartEvent)
                node = Listing([], _span(event)) if is_list else Table({}, _span(event))
                open_nodes.append(_Open(node, inside.next_place() if inside else ()))
                _refuse_depth(event, open_nodes, tree)
            if inside is None:
                root = node
            elif isinstance(inside.node, Listing):
                inside.node.items.append(node)
            else:
                _attach(node, inside, inside.node, tree)
        elif isinstance(event, yaml.CollectionEndEvent):
            open_nodes.pop()
        elif isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            if documents > 1:
                advice = _("Give each pathway a file of its own.")
                message = _("a second document begins here")
                raise EnoughError(_refusal(codes.SEVERAL_DOCUMENTS, event, tree, message, advice))
    return None if isinstance(root, Scalar) and not root.text and not root.quoted else root


def _shown(event: Any, inside: _Open | None, tree: Tree) -> str:
    """Return a scalar's text; a backslash in double quotes can write what no file may hold."""
    text: str = event.value
    hidden = first_hidden(text)
    found = hidden[1] if hidden else _("carriage return U+000D")
    if hidden or "\r" in text:
        message = _("{found} is written here with a backslash").format(found=found)
        advice = _("Delete the backslash and what belongs to it.")
        at = inside.next_place() if inside else ()
        tree.report(codes.HIDDEN_CHARACTER.at(tree.file, at, _span(event), message, advice))
    return without_hidden(text)


def _attach(node: Node, inside: _Open, table: Table, tree: Tree) -> None:
    """Put a key, or the value of one, into a mapping; of two equal keys the first is kept."""
    key = inside.key
    if key is None:
        inside.key = key = _key(node, tree)
        first = table.entries.get(key.text)
        inside.repeated = first is not None
        if first is not None:
            _refuse_twice(key, first, inside, tree)
        return
    if not inside.repeated:
        table.entries[key.text] = Entry(key, node)
    inside.key = None


def _key(node: Node, tree: Tree) -> Scalar:
    if isinstance(node, Scalar):
        return node
    message = _("a list or mapping cannot be a key")
    advice = _("Put one plain word before the colon.")
    raise EnoughError(codes.SYNTAX.at(tree.file, (), node.span, message, advice))


def _refuse_twice(key: Scalar, first: Entry, inside: _Open, tree: Tree) -> None:
    message = _("`{text}` stands twice here, first on line {line}").format(
        text=in_short(key.text), line=first.key.span.line
    )
    advice = _("Rename one of the two, or delete it.")
    place = (*inside.at, key.text)
    tree.report(codes.DUPLICATE_KEY.at(tree.file, place, key.span, message, advice))


def _refuse_indirection(event: Any, tree: Tree) -> None:
    if isinstance(event, yaml.AliasEvent):
        written = _("alias `*{name}`").format(name=in_short(str(event.anchor)))
        advice = _("Write the text out again here.")
    elif event.anchor:
        written = _("anchor `&{name}`").format(name=in_short(event.anchor))
        advice = _("Delete it, and quote text that begins with &.")
    elif getattr(event, "tag", None) is not None:
        written = _("tag `{name}`").format(name=in_short(event.tag))
        advice = _("Delete it, and quote text that begins with !.")
    else:
        return
    message = _("{written} is refused").format(written=written)
    raise EnoughError(_refusal(codes.ALIAS, event, tree, message, advice))


def _refuse_at_sight(text: str, tree: Tree) -> None:
    """Refuse, before parsing it, a text whose lines, commas or colons tell of too many entries."""
    pairs = text.count(": ") + text.count(":\n")
    if max(text.count("\n") + text.count(","), pairs * 3 // 2) > MOST_NODES:
        message = _("more than {most} lines and entries").format(most=thousands(MOST_NODES))
        advice = _("Split it into one file a pathway.")
        raise EnoughError(codes.TOO_LARGE.at(tree.file, (), None, message, advice))


def _refuse_more(event: Any, nodes: int, tree: Tree) -> None:
    if nodes > MOST_NODES:
        message = _("more than {most} entries in one file").format(most=thousands(MOST_NODES))
        advice = _("Split it into one file a pathway.")
        raise EnoughError(_refusal(codes.TOO_LARGE, event, tree, message, advice))


def _refuse_depth(event: Any, open_nodes: list[_Open], tree: Tree) -> None:
    if len(open_nodes) > DEEPEST:
        message = _("nested more than {most} levels deep").format(most=DEEPEST)
        advice = _("Close the brackets, or lift the text out a level.")
        raise EnoughError(_refusal(codes.TOO_DEEP, event, tree, message, advice))


def _refusal(code: Code, event: Any, tree: Tree, message: str, advice: str) -> Problem:
    return code.at(tree.file, (), _span(event), message, advice)


def _span(event: Any) -> Span:
    start, end = event.start_mark, event.end_mark
    return Span(start.line + 1, start.column + 1, end.line + 1, end.column + 1)
