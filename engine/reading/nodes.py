"""Nodes of a located tree: finding one, telling it, and a tree in which one stands changed.

A tree is never changed in place: what is put in stands in a copy of the way to it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from chamberwise.engine.diagnostics.problem import Pointer, Span
from chamberwise.engine.keys.digest import short_digest
from chamberwise.engine.reading.tree import Entry, Listing, Node, Scalar, Table

LONGEST = 90


def node_at(root: Node | None, pointer: Pointer) -> Node | None:
    """Return the node at a place, if there is one."""
    for part in pointer:
        if isinstance(root, Table) and part in root.entries:
            root = root.entries[str(part)].value
        elif isinstance(root, Listing) and isinstance(part, int) and 0 <= part < len(root.items):
            root = root.items[part]
        else:
            return None
    return root


def plain(node: Node) -> Any:
    """Return what a node says as lists and texts, white space apart."""
    match node:
        case Scalar():
            return " ".join(node.text.split())
        case Listing():
            return [plain(each) for each in node.items]
        case Table():
            return [[key, plain(entry.value)] for key, entry in node.entries.items()]


def digest_of(node: Node) -> str:
    """Return the digest by which a change names what it expects."""
    return short_digest(plain(node))


def in_words(node: Node) -> str:
    """Return a node as a message shows it: its text, or a list of names, where it is short."""
    text = _listed(node) if isinstance(node, Listing) else plain(node)
    return text if isinstance(text, str) and len(text) <= LONGEST else digest_of(node)


def _listed(node: Listing) -> str | None:
    """Return a list as it is typed on one line, if all that it holds are texts."""
    if all(isinstance(each, Scalar) for each in node.items):
        return f"[{', '.join(map(told, node.items))}]"
    return None


def told(node: Node) -> str:
    """Return what to write after `expects:` for a node: its text where that is short enough."""
    if isinstance(node, Scalar):
        text = in_words(node)
        is_bare = not any(sign in text for sign in ":#'\"{}[],&*!|>%@`")
        return text if is_bare and text else "'" + text.replace("'", "''") + "'"
    return in_words(node) if isinstance(node, Listing) else digest_of(node)


def put(root: Node, pointer: Pointer, value: Node, key: Span, after: str | None = None) -> Node:
    """Return the tree with a value at a place; a new name stands last, or after another."""
    part, rest = pointer[0], pointer[1:]

    def inside(old: Node | None) -> Node:
        if not rest:
            return value
        below = Listing([], value.span) if isinstance(rest[0], int) else Table({}, value.span)
        return put(old if old is not None else below, rest, value, key, after)

    if isinstance(root, Listing) and isinstance(part, int):
        items = [*root.items]
        items[part : part + 1] = [inside(items[part] if part < len(items) else None)]
        return Listing(items, root.span)
    assert isinstance(root, Table)
    return _entered(root, str(part), inside, key, None if rest else after)


def _entered(
    table: Table, name: str, inside: Callable[[Node | None], Node], key: Span, after: str | None
) -> Table:
    old = table.entries.get(name)
    entry = Entry(old.key if old else Scalar(name, key), inside(old.value if old else None))
    if old or after is None:
        return Table({**table.entries, name: entry}, table.span)
    entries: dict[str, Entry] = {}
    for each, known in table.entries.items():
        entries[each] = known
        if each == after:
            entries[name] = entry
    return Table(entries, table.span)


def taken(root: Node, pointer: Pointer) -> Node:
    """Return the tree without what stands at a place; a list goes with the last that it holds."""
    part, rest = pointer[0], pointer[1:]
    if isinstance(root, Listing) and isinstance(part, int):
        items = [*root.items]
        items[part : part + 1] = [taken(items[part], rest)] if rest else []
        return Listing(items, root.span)
    assert isinstance(root, Table)
    entries = dict(root.entries)
    old = entries.pop(str(part))
    left = taken(old.value, rest) if rest else None
    if left is not None and not (isinstance(left, Listing) and not left.items):
        entries = {**root.entries, str(part): Entry(old.key, left)}
    return Table(entries, root.span)
