"""Editing a file's text at places of its tree, leaving every other character as it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.reading.form_pathway import PATHWAY
from chamberwise.engine.reading.form_vocabulary import VOCABULARY
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.shapes import (
    Either,
    Entries,
    Items,
    Kinds,
    OneOrMore,
    Record,
    Shape,
)
from chamberwise.engine.reading.tree import Entry, Listing, Node, Scalar, Table


@dataclass(frozen=True, slots=True)
class Place:
    """One node of a file with its shape and, where it stands in a mapping, its entry."""

    pointer: Pointer
    node: Node
    shape: Shape
    entry: Entry | None


@dataclass(frozen=True, slots=True)
class Fault:
    """A damaged text, and how the damage must be told: its slug, its line, words of the report."""

    kind: str
    text: str
    slug: str
    line: int
    saying: str = ""


@dataclass(frozen=True)
class Source:
    """One good file of a library."""

    loaded: Loaded
    file: str

    @property
    def text(self) -> str:
        return self.loaded.files[self.file].text

    @property
    def pathway(self) -> Pathway | None:
        return self.loaded.files[self.file].pathway

    @property
    def root(self) -> Table:
        root = self.loaded.files[self.file].tree.root
        assert isinstance(root, Table)
        return root

    @cached_property
    def places(self) -> tuple[Place, ...]:
        """Every node, each with the shape it was read by."""
        whole = PATHWAY if self.pathway else VOCABULARY
        return tuple(_places((), self.root, whole, None))

    @cached_property
    def _line_starts(self) -> list[int]:
        starts = [0]
        for line in self.text.splitlines(keepends=True):
            starts.append(starts[-1] + len(line))
        return starts

    def at(self, *pointer: str | int) -> Node:
        """Return the node at a pointer; the one item of a list is met as if it stood alone."""
        node: Node = self.root
        for part in pointer:
            if isinstance(part, str) and isinstance(node, Listing) and len(node.items) == 1:
                node = node.items[0]
            if isinstance(node, Table):
                node = node.entries[str(part)].value
            elif isinstance(node, Listing) and isinstance(part, int):
                node = node.items[part]
        return node

    def has(self, *pointer: str) -> bool:
        node: Node = self.root
        for part in pointer:
            if not isinstance(node, Table) or part not in node.entries:
                return False
            node = node.entries[part].value
        return True

    def key(self, *pointer: str | int) -> Scalar:
        """Return the key at a pointer."""
        table = self.at(*pointer[:-1])
        assert isinstance(table, Table)
        return table.entries[str(pointer[-1])].key

    def start(self, node: Node) -> int:
        """Return where a node begins."""
        return self._line_starts[node.span.line - 1] + node.span.column - 1

    def end(self, node: Node) -> int:
        """Return where a node ends, closing bracket or quote included."""
        if isinstance(node, Scalar):
            end = self._line_starts[node.span.end_line - 1] + node.span.end_column - 1
            while end > self.start(node) and self.text[end - 1] in " \n":
                end -= 1
            return end
        children = _children(node)
        end = self.end(children[-1]) if children else self.start(node)
        closing = {"{": "}", "[": "]"}.get(self.text[self.start(node)])
        if closing and not (children and self.start(children[0]) == self.start(node)):
            end = self.text.index(closing, end) + 1
        return end

    def raw(self, node: Node) -> str:
        """Return a node's text as it stands in the file."""
        return self.text[self.start(node) : self.end(node)]

    def replaced(self, *changes: tuple[Node, str]) -> str:
        """Return the file's text with some nodes written otherwise."""
        return self.spliced(*((self.start(node), self.end(node), new) for node, new in changes))

    def spliced(self, *changes: tuple[int, int, str]) -> str:
        """Return the file's text with some stretches written otherwise."""
        text = self.text
        for start, end, new in sorted(changes, reverse=True):
            text = text[:start] + new + text[end:]
        return text

    def without(self, *pointer: str | int) -> str:
        """Return the file's text without an entry or an item."""
        return self.spliced(self.cut(*pointer))

    def cut(self, *pointer: str | int) -> tuple[int, int, str]:
        """Return the stretch that holds an entry or an item."""
        parent = self.at(*pointer[:-1])
        heads, values = _members(parent)
        which = _which(parent, pointer[-1])
        if which + 1 < len(heads):
            return self.start(heads[which]), self.start(heads[which + 1]), ""
        before = self.end(values[which - 1]) if which else self.start(heads[which])
        return before, self.end(values[which]), ""

    def with_entry(self, new: str, *pointer: str | int) -> str:
        """Return the file's text with a new entry or item before the one at a pointer."""
        return self.spliced(self.before(new, *pointer))

    def before(self, new: str, *pointer: str | int) -> tuple[int, int, str]:
        """Return the splice that puts a new entry or item before another."""
        parent = self.at(*pointer[:-1])
        head = _members(parent)[0][_which(parent, pointer[-1])]
        start = self.start(head)
        if self.is_flow(parent):
            return start, start, f"{new}, "
        column = head.span.column - 1
        if isinstance(parent, Listing):
            indent = "\n" + " " * (column - 2) + "- "
        else:
            indent = "\n" + " " * column
        return start, start, new + indent

    def is_flow(self, node: Node) -> bool:
        """Whether a collection stands in brackets."""
        children = _children(node)
        opens = self.text[self.start(node)] in "{["
        return opens and not (children and self.start(children[0]) == self.start(node))


def _children(node: Node) -> list[Node]:
    heads, values = _members(node)
    return [each for pair in zip(heads, values, strict=True) for each in pair]


def _members(node: Node) -> tuple[list[Node], list[Node]]:
    if isinstance(node, Listing):
        return node.items, node.items
    if isinstance(node, Table):
        entries = node.entries.values()
        return [each.key for each in entries], [each.value for each in entries]
    return [], []


def _which(parent: Node, part: str | int) -> int:
    return list(parent.entries).index(str(part)) if isinstance(parent, Table) else int(part)


def read_by(shape: Shape, node: Node) -> Shape:
    """Return the shape by which a node is read where several may stand."""
    if isinstance(shape, Either):
        return read_by(shape.short if isinstance(node, Scalar) else shape.long, node)
    if isinstance(shape, OneOrMore):
        return Items(shape.of) if isinstance(node, Listing) else shape.of
    return shape


def _places(at: Pointer, node: Node, shape: Shape, entry: Entry | None) -> Iterator[Place]:
    if isinstance(shape, Kinds) and isinstance(node, Table):
        shape = next(record for key, record in shape.by_key.items() if key in node.entries)
    yield Place(at, node, shape, entry)
    yield from _below(at, node, read_by(shape, node))


def _below(at: Pointer, node: Node, shape: Shape) -> Iterator[Place]:
    if isinstance(shape, Items) and isinstance(node, Listing):
        for place, item in enumerate(node.items):
            yield from _places((*at, place), item, shape.of, None)
    elif isinstance(node, Table):
        for name, entry in node.entries.items():
            inner = shape.keys[name].shape if isinstance(shape, Record) else None
            inner = shape.of if isinstance(shape, Entries) else inner
            assert inner
            yield from _places((*at, name), entry.value, inner, entry)
