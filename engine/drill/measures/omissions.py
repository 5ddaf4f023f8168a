"""Critical acts that were left out, of those whose turn had come, and those never reached."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from chamberwise.engine.drill.aligning.align import Departure, How
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.times import Timed


def passed_over(acts: Iterable[Timed], departures: Iterable[Departure]) -> tuple[Timed, ...]:
    """Return critical acts, those reached as well that the run was seen to go on without."""
    passed = {
        each.doing.act
        for each in departures
        if each.how is How.LEFT_OUT and each.doing is not None and each.then is not None
    }
    return tuple(
        replace(each, is_reached=True) if each.critical.act in passed else each for each in acts
    )


def omitted(acts: Sequence[Timed]) -> tuple[Timed, ...]:
    """Return the critical acts that were due and not done."""
    return tuple(each for each in acts if each.was_due and each.done is None)


def not_reached(acts: Sequence[Timed]) -> tuple[Timed, ...]:
    """Return the critical acts before whose turn the drill ended: neither done nor left out."""
    return tuple(each for each in acts if each.applies and not each.is_reached)


def omission(acts: Sequence[Timed]) -> Share:
    """Return how many were left out of how many that were due."""
    return Share(len(omitted(acts)), sum(each.was_due for each in acts))
