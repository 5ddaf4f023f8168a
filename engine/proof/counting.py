"""Which bounds a proof has to count: those that keep something from happening too often.

Without counting, a bounded step may be entered or passed by at any time: there are more walks, and
what holds on all of them holds on all walks there are. Only a rule on how *often* something
happens hangs on the counts themselves.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.program import Program
from chamberwise.engine.meaning.happens import shows_event
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import AnyOf, Pattern, Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.once import comes_again
from chamberwise.engine.proof.showing import moments_of
from chamberwise.engine.proof.spots import Spot, Spots, spots_of


def by_bounds(
    library: Library, pathway: PathwayId, rules: Sequence[Rule]
) -> dict[frozenset[Place], list[Rule]]:
    """Return some rules by the bounded steps that have to be counted for them; most need none."""
    groups: dict[frozenset[Place], list[Rule]] = {}
    arrows: _Arrows | None = None
    for rule in rules:
        needed: frozenset[Place] = frozenset()
        if rule.pattern is Pattern.BOUNDED_EXISTENCE and comes_again(library, rule.of):
            arrows = arrows or _arrows(compiled(library, pathway))
            needed = frozenset(arrows.enough(rule))
        groups.setdefault(needed, []).append(rule)
    return groups


@dataclass(frozen=True, slots=True)
class _Arrows:
    program: Program
    spots: Spots
    moments: Sequence[Sequence[Moment]]
    """What each node shows."""

    def enough(self, rule: Rule) -> Iterator[Place]:
        """Yield, for each spot that does what the rule is of again and again, the bounded steps

        without which it is done once.
        """
        does = self._showing(rule.of)
        begins_anew = self._showing(rule.scope.closes)
        bounded = {self.program.index[place]: place for place in self.program.counters}
        for spot in self.spots.arrows:
            if self.spots.node(spot) not in does or not self._comes_again(spot, begins_anew):
                continue
            for node in self._fewest(spot, begins_anew, frozenset(bounded)):
                yield bounded[node]

    def _fewest(
        self, spot: Spot, without: frozenset[int], bounded: frozenset[int]
    ) -> frozenset[int]:
        """Return few of some nodes without which arrows do not lead back to a spot; one if it

        will.
        """
        for node in sorted(bounded):
            if not self._comes_again(spot, without | {node}):
                return frozenset({node})
        needed = bounded
        for node in sorted(bounded):
            if not self._comes_again(spot, without | needed - {node}):
                needed -= {node}
        return needed

    def _showing(self, any_of: AnyOf) -> frozenset[int]:
        """Return the nodes at which one of several happenings can be shown."""
        return frozenset(
            number
            for number, moments in enumerate(self.moments)
            if any(shows_event(each, moment) for moment in moments for each in any_of)
        )

    def _comes_again(self, start: Spot, without: frozenset[int]) -> bool:
        """Whether arrows lead from a spot back to it, passing some nodes by."""
        arrows, size = self.spots.arrows, self.spots.size
        if start % size in without:
            return False
        met, waiting = set(), [start]
        while waiting:
            for spot in arrows[waiting.pop()]:
                if spot == start:
                    return True
                if spot not in met and spot % size not in without:
                    met.add(spot)
                    waiting.append(spot)
        return False


def _arrows(program: Program) -> _Arrows:
    return _Arrows(program, spots_of(program), [moments_of(node) for node in program.nodes])
