"""From the files of a library and what a sheet does to them, to the files that come of it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from chamberwise.engine.diagnostics.problem import Pointer, Problem, pointer_text
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.local import codes
from chamberwise.engine.local.locating import Located
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.local_sheet import Verb
from chamberwise.engine.reading.nodes import node_at, put, taken
from chamberwise.engine.reading.tree import Listing, Node, Scalar, Table, Tree

HEAD = (
    "edition",
    "status",
    "authors",
    "approved by",
    "approved on",
    "approved content",
    "approved parts",
    "reviewed",
    "review by",
    "reason for change",
)
"""What a sheet says of itself, and thereby of every pathway it covers."""
_ARROWS = ("go to", "otherwise", "not known", "after that")


@dataclass(slots=True)
class Work:
    """The trees as they are while operations are carried out, by file."""

    trees: dict[str, Tree] = field(default_factory=dict)

    def of(self, loaded: Loaded, file: str) -> Tree:
        """Return the tree of a file to work on, at first the same as it was read."""
        if file not in self.trees:
            read = loaded.files[file].tree
            self.trees[file] = Tree(file, read.root, [], read.lines)
        return self.trees[file]


def applied(loaded: Loaded, sheet: Tree, places: Iterable[Located]) -> Mapping[str, Tree]:
    """Return the changed trees by file; removals come last, so that they see every arrow.

    An arrow that the sheet itself puts in is not led on: it leads where the sheet says, or nowhere.
    """
    work, several = Work(), tuple(places)
    own = {(each.file, each.place) for each in several if each.operation.verb is not Verb.REMOVE}
    for place in several:
        if place.operation.verb is not Verb.REMOVE:
            _put_in(work.of(loaded, place.file), sheet, place)
    for place in sorted(several, key=_last_items_first):
        if place.operation.verb is Verb.REMOVE:
            _take_out(work.of(loaded, place.file), sheet, place, own)
    return work.trees


def with_head(tree: Tree, sheet: Tree) -> None:
    """Put what the sheet says of itself at the head of a pathway."""
    for key in HEAD:
        own, span = node_at(sheet.root, (key,)), sheet.span((key,), at_key=True)
        if own is not None and span is not None and tree.root is not None:
            tree.root = put(tree.root, (key,), own, span)
            tree.grafts[(key,)] = sheet
        elif tree.root is not None and node_at(tree.root, (key,)) is not None:
            tree.root = taken(tree.root, (key,))


def conflicts(sheet: Tree, places: Iterable[Located]) -> Iterator[Problem]:
    """Yield a problem for each operation on what an earlier one touches already."""
    met: list[Located] = []
    for place in places:
        for other in met:
            if place.file == other.file and _overlap(_touched(place), _touched(other)):
                first = sheet.span(other.operation.said, at_key=True)
                message = _("`{place}` is touched by an earlier line already")
                if first:
                    message = _("`{place}` is touched by line {line} already")
                message = message.format(
                    place=pointer_text(place.place), line=first.line if first else 0
                )
                span = sheet.span(place.operation.said)
                yield codes.CHANGED_TWICE.at(
                    sheet.file, place.operation.said, span, message, _("Make one of the two.")
                )
                break
        met.append(place)


def _touched(place: Located) -> Pointer:
    """Return what an operation touches: an item taken away moves those that follow it."""
    is_item = isinstance(place.place[-1], int)
    return place.place[:-1] if place.operation.verb is Verb.REMOVE and is_item else place.place


def _overlap(one: Pointer, other: Pointer) -> bool:
    shorter = min(len(one), len(other))
    return one[:shorter] == other[:shorter]


def arrows_to(root: Node | None, step: str) -> Iterator[Pointer]:
    """Yield the place of every arrow of a pathway that leads to a step."""
    for pointer, node in _arrows(root):
        if isinstance(node, Scalar) and node.text == step:
            yield pointer


def _put_in(tree: Tree, sheet: Tree, place: Located) -> None:
    operation = place.operation
    key = sheet.span(operation.said, at_key=True)
    assert tree.root is not None
    assert operation.to is not None
    assert key is not None
    tree.root = put(tree.root, place.place, operation.to, key, operation.after)
    tree.grafts[place.place] = sheet


def _take_out(
    tree: Tree, sheet: Tree, place: Located, own: Collection[tuple[str, Pointer]]
) -> None:
    operation = place.operation
    assert tree.root is not None
    if place.place[0] == "steps" and len(place.place) == 2:
        step, key = str(place.place[1]), sheet.span(operation.said, at_key=True)
        assert key is not None
        for pointer in list(arrows_to(tree.root, step)):
            is_own = any((place.file, pointer[:end]) in own for end in range(1, len(pointer) + 1))
            if operation.go_to is not None and not is_own:
                tree.root = put(tree.root, pointer, operation.go_to, key)
                tree.grafts[pointer] = sheet
        _off_the_chart(tree, step)
    tree.root = taken(tree.root, place.place)


def _off_the_chart(tree: Tree, step: str) -> None:
    """Take a step that is no more off the wall chart."""
    for key in ("first", "then"):
        listed = node_at(tree.root, ("wall chart", key))
        if isinstance(listed, Listing) and tree.root is not None:
            kept = [each for each in listed.items if getattr(each, "text", "") != step]
            if len(kept) < len(listed.items):
                left = Listing(kept, listed.span)
                tree.root = put(tree.root, ("wall chart", key), left, listed.span)


def _last_items_first(place: Located) -> tuple[int, ...]:
    return tuple(-part for part in place.place if isinstance(part, int))


def _arrows(root: Node | None) -> Iterator[tuple[Pointer, Node]]:
    yield from _under(root, ("start",))
    steps = node_at(root, ("steps",))
    for name, entry in steps.entries.items() if isinstance(steps, Table) else ():
        at: Pointer = ("steps", name)
        for key in _ARROWS:
            yield from _under(root, (*at, key))
        for key in ("answers", "on return"):
            held = node_at(entry.value, (key,))
            for each in held.entries if isinstance(held, Table) else ():
                yield from _under(root, (*at, key, each))
                yield from _under(root, (*at, key, each, "go to"))
        rows = node_at(entry.value, ("branch",))
        for row in range(len(rows.items)) if isinstance(rows, Listing) else ():
            yield from _under(root, (*at, "branch", row, "go to"))


def _under(root: Node | None, pointer: Pointer) -> Iterator[tuple[Pointer, Node]]:
    node = node_at(root, pointer)
    if node is not None:
        yield pointer, node
