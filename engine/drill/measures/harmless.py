"""Which departures are harmless: the same acts in another order that no rule or pair forbids,

and an act not done once more that was done before, where no rule asks for it anew. What came too
early is harmful only where it broke a rule itself: what broke later is told where it broke.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from chamberwise.engine.drill.aligning.align import Departure, How
from chamberwise.engine.drill.entries import Did, Looked
from chamberwise.engine.drill.measures.harm import Broken, Harmful
from chamberwise.engine.drill.measures.orders import Orders
from chamberwise.engine.drill.run import Event, Run
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import ActId

_OF_ORDER = frozenset({How.TOO_EARLY, How.TOO_LATE, How.AGAIN})


def judged(
    library: Library,
    run: Run,
    departures: Sequence[Departure],
    harms: Sequence[Harmful],
    pairs: Orders,
) -> tuple[Departure, ...]:
    """Return the departures, those marked that cost nothing."""
    broken = [each for harm in harms for each in harm.broken if not each.was_lucky]
    named = {name for each in broken for name in spoken_of(each)}
    thens = {order.then for order, _ in pairs.broken}
    named |= thens | {order.first for order, _ in pairs.broken}
    broke = {harm.event.number for harm in harms if not harm.was_lucky}
    return tuple(
        replace(each, is_harmless=True)
        if _is_harmless(library, run, each, thens if _only_early(each, broke) else named)
        else each
        for each in departures
    )


def _only_early(departure: Departure, broke: set[int]) -> bool:
    """Whether it is an act that came too early and broke nothing by it."""
    event = departure.event
    return (
        departure.how is How.TOO_EARLY
        and event is not None
        and isinstance(event.entry, Did)
        and event.number not in broke
    )


def _is_harmless(library: Library, run: Run, departure: Departure, named: set[str]) -> bool:
    if departure.how is How.LEFT_OUT:
        act = departure.doing.act if departure.doing else None
        return act is not None and act not in named and _was_done(run, act, departure.then)
    if departure.how not in _OF_ORDER or departure.event is None:
        return False
    entry = departure.event.entry
    if not isinstance(entry, Looked):
        return entry.act not in named
    if entry.finding in named:
        return False
    pathway = run.began.pathway
    return departure.how is How.TOO_LATE or _still_known(library, pathway, departure, entry)


def _was_done(run: Run, act: ActId, then: Event | None) -> bool:
    """Whether an act was done before some event, or before the drill began."""
    earlier = (each.entry for each in run.events if then is None or each.number < then.number)
    return any(isinstance(each, Did) and each.act == act for each in earlier) or any(
        moment.act == act for moment in run.so_far
    )


def _still_known(library: Library, pathway: PathwayId, departure: Departure, look: Looked) -> bool:
    """Whether what was seen too early still held when it was needed."""
    then = departure.then
    if then is None:
        return True
    field = layout_of(library).field(pathway, look.finding)
    return then.possible & field.every != field.every


def spoken_of(broken: Broken) -> set[str]:
    """Return the acts and findings that a broken rule is of or asks for."""
    rule = broken.rule
    return {
        name
        for any_of in (rule.of, rule.by)
        for each in any_of
        for name in (*each.acts, *each.asks)
    }
