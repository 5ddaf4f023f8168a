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
from chamberwise.engine.reading import codes

DEEPEST = 32
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_TAB = "found character '\\t' that cannot start any token"


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
    """One file's tree, or no root where it could not be read; `problems` says why."""

    file: str
    root: Node | None
    problems: list[Problem] = field(default_factory=list)

    def span(self, pointer: Pointer, *, at_key: bool = False) -> Span | None:
        """Return where a pointer leads; the nearest place above it when it leads nowhere."""
        node, key = self.root, None
        for part in pointer:
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


class _RefusedError(Exception):
    def __init__(self, problem: Problem) -> None:
        self.problem = problem


def parse(text: str, file: str) -> Tree:
    """Return the tree of one YAML text. Never raises for any text."""
    tree = Tree(file, None)
    try:
        tree.root = _build(yaml.parse(text, Loader=_LOADER), tree)
    except _RefusedError as refusal:
        tree.root = None
        tree.problems.append(refusal.problem)
    except yaml.MarkedYAMLError as error:
        tree.problems.append(_syntax(error, file))
    except (yaml.YAMLError, ValueError, RecursionError) as error:
        message = f"cannot be read as YAML ({type(error).__name__})"
        advice = "Look for brackets or quotes that are never closed."
        tree.problems.append(codes.SYNTAX.at(file, (), None, message, advice))
    if tree.root is None and not tree.problems:
        advice = "Start from `chamberwise new ID`."
        tree.problems.append(codes.EMPTY.at(file, (), None, "the file is empty", advice))
    return tree


@dataclass(slots=True)
class _Open:
    node: Listing | Table
    key: Scalar | None = None
    repeated: bool = False


def _build(events: Iterator[Any], tree: Tree) -> Node | None:
    root: Node | None = None
    documents = 0
    open_nodes: list[_Open] = []
    for event in events:
        if isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            if documents > 1:
                advice = "Give each pathway a file of its own."
                message = "a second document begins here"
                raise _RefusedError(_refusal(codes.SEVERAL_DOCUMENTS, event, tree, message, advice))
        elif isinstance(event, yaml.NodeEvent):
            _refuse_indirection(event, tree)
            node = _node(event)
            if open_nodes:
                _attach(node, open_nodes[-1], tree)
            else:
                root = node
            if not isinstance(node, Scalar):
                open_nodes.append(_Open(node))
                _refuse_depth(event, open_nodes, tree)
        elif isinstance(event, yaml.CollectionEndEvent):
            open_nodes.pop()
    return None if isinstance(root, Scalar) and not root.text and not root.quoted else root


def _node(event: Any) -> Node:
    if isinstance(event, yaml.ScalarEvent):
        return Scalar(event.value, _span(event), quoted=not event.implicit[0])
    if isinstance(event, yaml.SequenceStartEvent):
        return Listing([], _span(event))
    return Table({}, _span(event))


def _attach(node: Node, inside: _Open, tree: Tree) -> None:
    if isinstance(inside.node, Listing):
        inside.node.items.append(node)
        return
    if inside.key is None:
        inside.key, inside.repeated = _key(node, inside.node, tree)
        return
    if not inside.repeated:
        inside.node.entries[inside.key.text] = Entry(inside.key, node)
    inside.key = None


def _key(node: Node, table: Table, tree: Tree) -> tuple[Scalar, bool]:
    if not isinstance(node, Scalar):
        message = "a list or mapping cannot be a key"
        advice = "Put one plain word before the colon."
        raise _RefusedError(codes.SYNTAX.at(tree.file, (), node.span, message, advice))
    first = table.entries.get(node.text)
    if first:
        message = f"`{node.text}` stands twice here, first on line {first.key.span.line}"
        advice = "Rename one of the two, or delete it."
        tree.problems.append(codes.DUPLICATE_KEY.at(tree.file, (), node.span, message, advice))
    return node, first is not None


def _refuse_indirection(event: Any, tree: Tree) -> None:
    if isinstance(event, yaml.AliasEvent):
        message, advice = f"alias `*{event.anchor}`", "Write the text out again here."
    elif event.anchor:
        message, advice = (
            f"anchor `&{event.anchor}`",
            "Delete it, and quote text that begins with &.",
        )
    elif getattr(event, "tag", None) not in (None, "!"):
        message, advice = f"tag `{event.tag}`", "Delete it, and quote text that begins with !."
    else:
        return
    raise _RefusedError(_refusal(codes.ALIAS, event, tree, f"{message} is refused", advice))


def _refuse_depth(event: Any, open_nodes: list[_Open], tree: Tree) -> None:
    if len(open_nodes) > DEEPEST:
        message = f"nested more than {DEEPEST} levels deep"
        advice = "Close the brackets, or lift the text out a level."
        raise _RefusedError(_refusal(codes.TOO_DEEP, event, tree, message, advice))


def _refusal(code: Code, event: Any, tree: Tree, message: str, advice: str) -> Problem:
    return code.at(tree.file, (), _span(event), message, advice)


def _span(event: Any) -> Span:
    start, end = event.start_mark, event.end_mark
    return Span(start.line + 1, start.column + 1, end.line + 1, end.column + 1)


def _syntax(error: yaml.MarkedYAMLError, file: str) -> Problem:
    mark = error.problem_mark or error.context_mark
    span = Span(mark.line + 1, mark.column + 1, mark.line + 1, mark.column + 2) if mark else None
    message = str(error.problem or error.context or "cannot be read as YAML")
    advice = "Check indentation, colons, brackets and quotes on this line and the one above."
    if _TAB in message or "tab" in message:
        message, advice = "a tab stands where spaces are due", "Indent with spaces only."
    elif "mapping values are not allowed" in message:
        message = "a colon in plain text"
        advice = "Put the whole text in quotes, or check the indentation of this line."
    return codes.SYNTAX.at(file, (), span, message, advice)
