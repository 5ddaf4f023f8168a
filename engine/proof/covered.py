"""What a sweep went through, and what of it an edit leaves standing.

The states that a sweep came to are closed: every move from one of them leads to another, and none
loses a machine that held. That is all a proof needs. After an edit most spots have the moves they
had. Those that changed are gone on with anew, from all that stood there, and from then on only what
is new. What is covered in the end is closed again. Some of it no walk may come to any longer: what
holds there holds all the more, and what breaks there is judged afresh.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.model.rule import Rule
from chamberwise.engine.proof.between import Between
from chamberwise.engine.proof.carried import Carried, Joined
from chamberwise.engine.proof.front import Front
from chamberwise.engine.proof.ground import Ground
from chamberwise.engine.proof.outlook import Outlook, outlook_after
from chamberwise.engine.proof.spots import Spot
from chamberwise.engine.proof.sweep import Sweep

Claim: TypeAlias = tuple[Rule, bool]
"""A rule, and whether it is claimed that what it is of never happens; else, that it holds."""


@dataclass(frozen=True, slots=True)
class Covered:
    """A closed set of states, and the claims that hold in them all."""

    outlook: Outlook
    carried: Carried
    fronts: Mapping[Spot, Front]
    claims: Sequence[Claim]
    """By the number of the machine that watches it."""
    holding: frozenset[int]

    @property
    def held(self) -> frozenset[Claim]:
        """The claims that hold."""
        return frozenset(self.claims[number] for number in self.holding)


def covered(sweep: Sweep, claims: Sequence[Claim], holding: frozenset[int]) -> Covered:
    """Return what a sweep covered that came to its end and kept what it met."""
    return Covered(sweep.outlook, sweep.carried, sweep.met, claims, holding)


def resumed(
    before: Covered, ground: Ground, apart: Between, most: int, *, reduced: bool
) -> Covered | None:
    """Return what is covered after an edit; `None` where more would have to be looked at."""
    by = outlook_after(before.outlook, ground, apart, reduced=reduced)
    sweep = _Resumed(before, by, apart, most)
    found = sweep.run()
    if found.stopped:
        return None
    return covered(sweep, before.claims, before.holding - found.broken)


class _Resumed(Sweep):
    """A sweep that begins with what another covered. What that one met is left as it was."""

    def __init__(self, before: Covered, by: Outlook, apart: Between, most: int) -> None:
        super().__init__(by, most, keeps=True)
        self.carried = before.carried.again(by.shots, self.found)
        self.joined = Joined(self.carried)
        self.copied: set[Spot] = set()
        kept_before, beyond_before = before.outlook.kept, before.outlook.beyond
        cleared = {node for node, was in apart.nodes.items() if by.kept[node] != kept_before[was]}
        opened = {node for node, was in apart.nodes.items() if was in beyond_before} - by.beyond
        size, changed = self.spots.size, set(apart.changed)
        for spot, was in apart.spots.items():
            if spot % size in cleared:
                changed.update(self.ground.before[spot])
            elif was in before.fronts:
                self.met[spot] = before.fronts[was]
            if spot % size in opened:
                changed.add(spot)
        self.anew = changed & self.met.keys()
        """The spots from which all that stood there goes on again."""

    def _go_round(self, ring: Sequence[Spot]) -> None:
        for spot in ring:
            if spot in self.anew:
                self.waiting.setdefault(spot, {})
        super()._go_round(ring)

    def _go_on(self, spot: Spot, front: Front) -> None:
        known = self.met.get(spot)
        if known is None or spot in self.copied:
            super()._go_on(spot, front)
            return
        self.copied.add(spot)
        self.met[spot] = known = dict(known)
        if spot not in self.anew:
            super()._go_on(spot, front)
            return
        new, _ = self._news(known, front)
        self.found.states += len(new)
        self._pass(spot, known)
