"""Which bounds a proof has to count: those that keep something from happening too often.

Without counting, a bounded step may be entered or passed by at any time: there are more walks, and
what holds on all of them holds on all walks there are. Only a rule on how *often* something
happens hangs on the counts themselves.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.program import Program
from chamberwise.engine.meaning.happens import shows_event
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import AnyOf, Pattern, Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.once import comes_again
from chamberwise.engine.proof.shots import moments_at
from chamberwise.engine.proof.spots import Arrows, Spot, arrows


def by_bounds(
    library: Library, pathway: PathwayId, rules: Sequence[Rule]
) -> dict[frozenset[Place], list[Rule]]:
    """Return some rules by the bounded steps that have to be counted for them; most need none."""
    groups: dict[frozenset[Place], list[Rule]] = {}
    program: Program | None = None
    spots: Arrows = {}
    for rule in rules:
        needed: frozenset[Place] = frozenset()
        if rule.pattern is Pattern.BOUNDED_EXISTENCE and comes_again(library, rule.of):
            program = program or compiled(library, pathway)
            spots = spots or arrows(program)
            needed = frozenset(_enough(program, spots, rule))
        groups.setdefault(needed, []).append(rule)
    return groups


def _enough(program: Program, spots: Arrows, rule: Rule) -> Iterator[Place]:
    """Yield, for each spot that does what the rule is of again and again, the bounded steps

    without which it is done once.
    """
    does = _showing(program, rule.of)
    begins_anew = _showing(program, rule.scope.closes)
    bounded = {program.index[place]: place for place in program.counters}
    for spot in spots:
        if spot[1] not in does or not _comes_again(spots, spot, begins_anew):
            continue
        for node in _fewest(spots, spot, begins_anew, frozenset(bounded)):
            yield bounded[node]


def _fewest(
    spots: Arrows, spot: Spot, without: frozenset[int], bounded: frozenset[int]
) -> frozenset[int]:
    """Return few of some nodes without which arrows do not lead back to a spot; one if it will."""
    for node in sorted(bounded):
        if not _comes_again(spots, spot, without | {node}):
            return frozenset({node})
    needed = bounded
    for node in sorted(bounded):
        if not _comes_again(spots, spot, without | needed - {node}):
            needed -= {node}
    return needed


def _showing(program: Program, any_of: AnyOf) -> frozenset[int]:
    """Return the nodes at which one of several happenings can be shown."""
    return frozenset(
        number
        for number, node in enumerate(program.nodes)
        for moment in moments_at(program, node)
        if any(shows_event(each, moment) for each in any_of)
    )


def _comes_again(spots: Arrows, start: Spot, without: frozenset[int]) -> bool:
    """Whether arrows lead from a spot back to it, passing some nodes by."""
    met, waiting = set(), [start]
    while waiting:
        for spot in spots[waiting.pop()]:
            if spot == start and start[1] not in without:
                return True
            if spot not in met and spot[1] not in without:
                met.add(spot)
                waiting.append(spot)
    return False
