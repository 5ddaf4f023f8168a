"""What walks of a good library come to: a way out that is never taken can be lost without harm."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Branch

NOT_KNOWN = -1


@cache
def knowledge(library: Library) -> dict[Place, set[int]]:
    """Return, by step, every knowledge a team comes to it with, as bits of the layout."""
    found: dict[Place, set[int]] = {}
    for name in library.pathways:
        explored = explore(library, name)
        for state, bits in enumerate(explored.bits):
            found.setdefault(explored.at_node(state), set()).add(bits)
    return found


def possible(library: Library, place: Place, finding: str) -> set[str]:
    """Return the values of a finding that are possible at a step on some walk."""
    field = layout_of(library).field(place.pathway, finding)
    return {value for bits in knowledge(library).get(place, ()) for value in field.values(bits)}


def taken(library: Library, pathway: str, branch: Branch) -> set[int]:
    """Return the rows of a branch, and `NOT_KNOWN`, that some walk takes."""
    place = Place(pathway, branch.id)
    return {way for bits in knowledge(library).get(place, ()) for way in _way(library, place, bits)}


def _way(library: Library, place: Place, bits: int) -> Iterator[int]:
    branch = library.step(place)
    assert isinstance(branch, Branch)
    undecided = False
    for number, row in enumerate(branch.rows):
        fields = [
            (layout_of(library).field(place.pathway, name), vs) for name, vs in row.when.terms
        ]
        if all(not bits & field.every & ~field.mask(values) for field, values in fields):
            yield number
            return
        undecided |= all(bits & field.mask(values) for field, values in fields)
    if undecided:
        yield NOT_KNOWN
