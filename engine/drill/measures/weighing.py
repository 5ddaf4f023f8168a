"""Which departures matter, so that a debrief does not open with a trifle that came first.

What matters is of a critical act, of a grave rule that was broken, or of a hard order; nothing is
weighed by how far it was out of place.
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


def weighed(
    run: Run, departures: Sequence[Departure], harms: Sequence[Harmful], pairs: Orders
) -> tuple[Departure, ...]:
    """Return the departures, those marked that matter."""
    grave = [each for harm in harms for each in harm.broken if each.is_grave]
    names = {name for each in grave for name in spoken_of(each)}
    names |= {act for order, _ in pairs.broken for act in (order.first, order.then)}
    names |= {each.act for each in run.critical}
    harmed = {harm.event.number for harm in harms if harm.is_grave}
    return tuple(
        replace(each, matters=True) if _matters(each, names, harmed) else each
        for each in departures
    )


def _matters(departure: Departure, names: set[str], harmed: set[int]) -> bool:
    event = departure.event
    if departure.is_harmless:
        return False
    if event is not None and event.number in harmed:
        return True
    if departure.how in (How.AGAIN, How.BESIDES):
        return False
    return bool(_named(departure) & names)


def _named(departure: Departure) -> set[str]:
    doing, found = departure.doing, set[str]()
    if doing is not None:
        found |= {name for name in (doing.act, doing.looks_at) if name}
    if departure.event is not None:
        entry = departure.event.entry
        found.add(entry.act if isinstance(entry, Did) else entry.finding)
    return found
