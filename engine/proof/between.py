"""Two grounds laid side by side: that before an edit, and that after it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.exploration.program import Node
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Outcome
from chamberwise.engine.proof.ground import Ground
from chamberwise.engine.proof.spots import Spot

SpotName: TypeAlias = tuple[tuple[Place, ...], Place, bool]
"""The handovers to come back to, the step, and whether it is the door before it."""


@dataclass(frozen=True, slots=True)
class Between:
    """What is the same in both, by its numbers in the later one and in the earlier."""

    spots: Mapping[Spot, Spot]
    nodes: Mapping[int, int]
    changed: frozenset[Spot]
    """Of these spots those from which moves do something else now, or lead elsewhere."""


def between(earlier: Ground, later: Ground) -> Between | None:
    """Return what two grounds share; `None` where their states cannot be compared.

    Those can be where the same bits mean the same, and acts do the same.
    """
    if earlier.entry != later.entry or not _mean_the_same(earlier, later):
        return None
    names, before = _names(later), {name: spot for spot, name in _names(earlier).items()}
    spots = {spot: before[name] for spot, name in names.items() if name in before}
    size, size_before = later.spots.size, earlier.spots.size
    nodes = {spot % size: was % size_before for spot, was in spots.items()}
    was_named = {was: name for name, was in before.items()}
    same = {
        node
        for node, was in nodes.items()
        if _alike(later, later.program.nodes[node], earlier, earlier.program.nodes[was])
    }
    changed = {
        spot
        for spot, was in spots.items()
        if spot % size not in same
        or [names[each] for each in later.spots.arrows[spot]]
        != [was_named[each] for each in earlier.spots.arrows[was]]
    }
    return Between(spots, nodes, frozenset(changed))


def _mean_the_same(earlier: Ground, later: Ground) -> bool:
    one, other = earlier.program, later.program
    return (
        one.layout == other.layout
        and (one.tracked, one.counters) == (other.tracked, other.counters)
        and _acts(one.library) == _acts(other.library)
    )


def _acts(library: Library) -> object:
    own = [(name, each.words.acts) for name, each in library.pathways.items()]
    return library.shared.acts, own


def _names(ground: Ground) -> dict[Spot, SpotName]:
    nodes, spots = ground.program.nodes, ground.spots
    stacks = [tuple([nodes[each].place for each in stack]) for stack in spots.stacks]
    return {
        spot: (stacks[spot // spots.size], node.place, node.is_door)
        for spot in spots.arrows
        for node in [nodes[spot % spots.size]]
    }


def _alike(later: Ground, node: Node, earlier: Ground, was: Node) -> bool:
    """Whether a step is the same, and so are its count's door and whether a walk ends at it."""
    if node.step != was.step:
        return False
    if node.door and was.door:
        return (node.door.counter is None) == (was.door.counter is None)
    is_end = isinstance(node.step, Outcome)
    return not is_end or later.is_end(node.place) == earlier.is_end(was.place)
