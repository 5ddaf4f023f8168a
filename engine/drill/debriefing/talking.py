"""At most three things to talk about: the first harm, the first departure, the best thing done.

Grave harm comes before any departure, a lesser one behind a departure that matters.
"""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.drill.aligning.align import Departure
from chamberwise.engine.drill.entries import Level
from chamberwise.engine.drill.measures.harm import Harmful
from chamberwise.engine.drill.measures.measured import Measured
from chamberwise.engine.drill.measures.times import Timed


@dataclass(frozen=True, slots=True)
class Talking:
    """What to talk about; None where there is nothing of the kind."""

    harm: Harmful | None
    departure: Departure | None
    best: Timed | None

    @property
    def harm_leads(self) -> bool:
        """Whether the harm is to be talked about first."""
        matters = self.departure is not None and self.departure.matters
        return self.harm is not None and (self.harm.is_grave or not matters)


def talking(of: Measured) -> Talking:
    """Return what to talk about. A departure that is the harm itself is told once."""
    grave = [each for each in of.harms if each.is_grave]
    real = [each for each in of.harms if not each.was_lucky]
    harm = next(iter(grave or real), None)
    departure = of.first_departure
    if harm and departure and departure.event is harm.event:
        later = [
            each for each in of.departures if not each.is_harmless and each.event is not harm.event
        ]
        departure = next((each for each in later if each.matters), next(iter(later), None))
    return Talking(harm, departure, best_done(of))


def best_done(of: Measured) -> Timed | None:
    """Return the critical act recalled unaided that came soonest for its window, if any did."""
    harmful = {each.event.entry for each in of.harms}
    good = [
        each
        for each in of.acts
        if each.done and each.done.level is Level.RECALLED and each.done not in harmful
    ]
    return min((each for each in good if not each.is_late), key=_share_of_window, default=None)


def _share_of_window(timed: Timed) -> float:
    if timed.duration is None or not timed.critical.soft:
        return 1.0
    return timed.duration.seconds / timed.critical.soft
