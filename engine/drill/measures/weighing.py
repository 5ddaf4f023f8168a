"""Which departures matter, so that a debrief does not open with a trifle that came first.

What matters is a critical act left out or late, a grave rule that was broken, or a hard order; a
critical act that merely came early and broke no more than a lesser rule is a lesser departure.
Nothing is weighed by how far it was out of place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from chamberwise.engine.drill.aligning.align import Departure, How
from chamberwise.engine.drill.entries import Did
from chamberwise.engine.drill.measures.harm import Harmful
from chamberwise.engine.drill.measures.harmless import spoken_of
from chamberwise.engine.drill.measures.orders import Orders
from chamberwise.engine.drill.run import Run
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.words import ActId


def weighed(
    run: Run, departures: Sequence[Departure], harms: Sequence[Harmful], pairs: Orders
) -> tuple[Departure, ...]:
    """Return the departures, those marked that matter."""
    grave = [each for harm in harms for each in harm.broken if each.is_grave]
    names = {name for each in grave for name in spoken_of(each)}
    names |= {act for order, _ in pairs.broken for act in (order.first, order.then)}
    critical = {each.act for each in run.critical}
    harmed = {harm.event.number for harm in harms if harm.is_grave}
    return tuple(
        replace(
            each,
            matters=_matters(each, names, critical, harmed),
            lacked=_lacked(each, pairs),
            broke=_broke(each, harms),
        )
        for each in departures
    )


def _lacked(departure: Departure, pairs: Orders) -> tuple[ActId, ...]:
    event = departure.event
    if departure.how is not How.TOO_EARLY or event is None:
        return ()
    return tuple(order.first for order, by in pairs.broken if by.number == event.number)


def _broke(departure: Departure, harms: Sequence[Harmful]) -> tuple[Rule, ...]:
    event = departure.event
    broken = [each for harm in harms if harm.event is event for each in harm.broken]
    return tuple(each.rule for each in broken if not each.was_lucky and not each.is_never_right)


def _matters(departure: Departure, names: set[str], critical: set[ActId], harmed: set[int]) -> bool:
    event = departure.event
    if departure.is_harmless:
        return False
    if event is not None and event.number in harmed:
        return True
    if departure.how in (How.AGAIN, How.BESIDES):
        return False
    if departure.how is not How.TOO_EARLY:
        names = names | critical
    return bool(_named(departure) & names)


def _named(departure: Departure) -> set[str]:
    doing, found = departure.doing, set[str]()
    if doing is not None:
        found |= {name for name in (doing.act, doing.looks_at) if name}
    if departure.event is not None:
        entry = departure.event.entry
        found.add(entry.act if isinstance(entry, Did) else entry.finding)
    return found
