"""What was done wrong by somebody who was sure: to be talked about first, never marked."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.drill.aligning.align import Departure, How
from chamberwise.engine.drill.entries import Certainty
from chamberwise.engine.drill.measures.harm import Harmful
from chamberwise.engine.drill.run import Event

_WRONG = frozenset({How.BESIDES, How.TOO_EARLY, How.TOO_LATE})


def confident_errors(
    harms: Iterable[Harmful], departures: Iterable[Departure]
) -> tuple[Event, ...]:
    """Return what somebody was sure of and that did grave harm or departed from the pathway.

    A lesser rule is mostly broken by what was left out before an act that is right in itself.
    """
    wrong = [each.event for each in harms if each.is_grave]
    wrong += [
        each.event
        for each in departures
        if each.event is not None and each.how in _WRONG and not each.is_harmless
    ]
    sure = {event.number: event for event in wrong if event.entry.certainty is Certainty.SURE}
    return tuple(sure[number] for number in sorted(sure))
