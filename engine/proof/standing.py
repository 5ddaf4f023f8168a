"""What was proved of a pathway at earlier saves, as far as it still stands."""

from __future__ import annotations

from dataclasses import dataclass, field

from chamberwise.engine.proof.between import between
from chamberwise.engine.proof.covered import Claim, Covered, resumed
from chamberwise.engine.proof.ground import Ground

MOST_STATES = 500_000
"""Of how many states it is worth remembering that they were covered."""
MOST_KEPT = 64
"""How many covered sets are gone through at a save; with more, searching anew is no slower."""


@dataclass(slots=True)
class Standing:
    """The sets of states covered last, all on one ground."""

    kept: list[Covered] = field(default_factory=list)

    def aside(self) -> Standing:
        """Return the same, for a proof from which nothing is to be remembered here."""
        return Standing(list(self.kept))

    def claims(self, ground: Ground, *, reduced: bool) -> frozenset[Claim]:
        """Return the claims of earlier saves that hold on a ground as well, and cover it."""
        apart = between(self.kept[0].outlook.ground, ground) if self.kept else None
        if apart is None or len(self.kept) > MOST_KEPT:
            self.kept = []
            return frozenset()
        again = [resumed(each, ground, apart, MOST_STATES, reduced=reduced) for each in self.kept]
        self.kept = [each for each in again if each is not None and each.holding]
        return frozenset[Claim]().union(*(each.held for each in self.kept))

    def keep(self, each: Covered) -> None:
        """Remember what was covered on the same ground."""
        self.kept.append(each)
