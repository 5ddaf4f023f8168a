"""Which pathway leads into which by handover."""

from __future__ import annotations

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Handover, PathwayId


def hands_over_to(library: Library, pathway: PathwayId) -> tuple[PathwayId, ...]:
    """Return the pathways of the library that one hands over to, in document order."""
    steps = library.pathways[pathway].steps.values()
    names = (step.to for step in steps if isinstance(step, Handover))
    return tuple(name for name in dict.fromkeys(names) if name in library.pathways)


def reading_order(library: Library) -> tuple[PathwayId, ...]:
    """Return every pathway: first those nobody hands over to, each followed by where it leads."""
    inner = {to for name in library.pathways for to in hands_over_to(library, name)}
    order: dict[PathwayId, None] = {}
    waiting = [name for name in library.pathways if name not in inner]
    for name in waiting:
        order[name] = None
        waiting += [to for to in hands_over_to(library, name) if to not in waiting]
    return tuple(order) + tuple(name for name in library.pathways if name not in order)
