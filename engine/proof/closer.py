"""Looking closer, claim by claim, until as little is looked at as tells whether it holds.

A claim is that a machine is never lost: a rule's own, or that what a rule is of never happens. Each
is first judged in a view of what it speaks of alone, in which there are more walks than there are,
and far fewer states. What breaks there is judged again with all that is known, and at last with
every bound counted as well.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from chamberwise.engine.proof.ground import Ground
from chamberwise.engine.proof.monitors import Monitor, laid
from chamberwise.engine.proof.outlook import outlook
from chamberwise.engine.proof.sweep import Sweep
from chamberwise.engine.proof.view import EVERYTHING, View, known_view, own_view, together

FEW, MORE = 6, 48
"""How many states of a spot at a time are enough to see, of most rules, that they arise."""


@dataclass(slots=True)
class Closer:
    """Some claims, and what is known of them so far."""

    ground: Ground
    claims: Sequence[Monitor]
    most: int
    reduced: bool
    proved: set[int] = field(default_factory=set)
    """The numbers of the claims that hold on every walk."""
    arising: set[int] = field(default_factory=set)
    """The numbers of the triggers that some walk comes to, or may."""
    told: set[int] = field(default_factory=set)
    """The numbers of the claims of which nothing more has to be known."""
    states: int = 0
    tell: Callable[[Closer], None] | None = None
    """Whom to tell after each look at several claims how it stands."""
    keep: Callable[[Sweep, Sequence[int], frozenset[int]], None] | None = None
    """Who remembers a sweep: its claims by the numbers they have here, and those that held."""

    def judge(self) -> None:
        """Prove the claims that hold, as far as can be; the rest breaks, or may."""
        program, entry = self.ground.program, self.ground.entry
        known = known_view(program, entry)
        self._see_arise(known)
        self._say()
        views = {
            number: own_view(program, entry, self.claims[number].roles) for number in self._open()
        }
        broken = [
            number
            for view, numbers in together(program, views)
            for number in self._judged(view, numbers)
        ]
        broken = self._judged(known, broken)
        self.arising.update(number for number in broken if self.claims[number].is_trigger)
        self._say()
        self._judged(EVERYTHING, [each for each in broken if not self.claims[each].is_trigger])

    def _open(self) -> list[int]:
        known = self.proved | self.arising | self.told
        return [number for number in range(len(self.claims)) if number not in known]

    def _see_arise(self, known: View) -> None:
        for a_spot in (FEW, MORE):
            triggers = [number for number in self._open() if self.claims[number].is_trigger]
            self.arising |= self.broken(known, triggers, a_spot)

    def _say(self) -> None:
        if self.tell is not None:
            self.tell(self)

    def _judged(self, view: View, numbers: Sequence[int]) -> list[int]:
        """Prove the claims that hold in a view; return the others."""
        broken = self.broken(view, numbers)
        self.proved.update(set(numbers) - broken)
        self._say()
        return [number for number in numbers if number in broken]

    def broken(self, view: View, numbers: Sequence[int], a_spot: int | None = None) -> set[int]:
        """Return which of some claims break in a view, or may where there are too many states."""
        if not numbers:
            return set()
        watching = laid(self.claims[number] for number in numbers)
        by = outlook(self.ground, watching, view, reduced=self.reduced)
        keeps = a_spot is None and self.keep is not None
        sweep = Sweep(by, self.most, a_spot, keeps=keeps)
        found = sweep.run()
        self.states += found.states
        broken = range(len(numbers)) if found.stopped else found.broken
        holding = frozenset(range(len(numbers))).difference(broken)
        if keeps and self.keep and holding:
            self.keep(sweep, numbers, holding)
        return {numbers[at] for at in broken}
