"""Which departures are harmless: the same acts in another order that no rule or pair forbids."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from chamberwise.engine.drill.aligning.align import Departure, How
from chamberwise.engine.drill.entries import Looked
from chamberwise.engine.drill.measures.harm import Broken, Harmful
from chamberwise.engine.drill.measures.orders import Orders
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId

_OF_ORDER = frozenset({How.TOO_EARLY, How.TOO_LATE, How.AGAIN})


def judged(
    library: Library,
    pathway: PathwayId,
    departures: Sequence[Departure],
    harms: Sequence[Harmful],
    pairs: Orders,
) -> tuple[Departure, ...]:
    """Return the departures, those marked that cost nothing."""
    broken = [each for harm in harms for each in harm.broken if not each.was_lucky]
    named = {name for each in broken for name in _spoken_of(each)}
    named |= {act for order, _ in pairs.broken for act in (order.first, order.then)}
    return tuple(
        replace(each, is_harmless=True) if _is_harmless(library, pathway, each, named) else each
        for each in departures
    )


def _is_harmless(
    library: Library, pathway: PathwayId, departure: Departure, named: set[str]
) -> bool:
    if departure.how not in _OF_ORDER or departure.event is None:
        return False
    entry = departure.event.entry
    if not isinstance(entry, Looked):
        return entry.act not in named
    if entry.finding in named:
        return False
    return departure.how is How.TOO_LATE or _still_known(library, pathway, departure, entry)


def _still_known(library: Library, pathway: PathwayId, departure: Departure, look: Looked) -> bool:
    """Whether what was seen too early still held when it was needed."""
    then = departure.then
    if then is None:
        return True
    field = layout_of(library).field(pathway, look.finding)
    return then.possible & field.every != field.every


def _spoken_of(broken: Broken) -> set[str]:
    rule = broken.rule
    return {
        name
        for any_of in (rule.of, rule.by)
        for each in any_of
        for name in (*each.acts, *each.asks)
    }
