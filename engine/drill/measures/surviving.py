"""How long something took over many runs, those in which it never happened among them.

Kaplan and Meier (1958): a run that ended before it happened is censored there, not left out.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Duration:
    """So many seconds until it happened, or until nobody looked any more."""

    seconds: float
    happened: bool


@dataclass(frozen=True, slots=True)
class Fall:
    """From this time on, the share in which it has not happened yet."""

    seconds: float
    not_yet: float


def curve(durations: Iterable[Duration]) -> tuple[Fall, ...]:
    """Return the Kaplan-Meier curve, one fall for each time at which something happened."""
    given = sorted(durations, key=lambda each: each.seconds)
    at_risk, not_yet = len(given), 1.0
    falls: list[Fall] = []
    place = 0
    while place < len(given):
        now = given[place].seconds
        here = [each for each in given[place:] if each.seconds == now]
        happened = sum(each.happened for each in here)
        if happened:
            not_yet *= 1 - happened / at_risk
            falls.append(Fall(now, not_yet))
        at_risk -= len(here)
        place += len(here)
    return tuple(falls)


def median(durations: Iterable[Duration]) -> float | None:
    """Return by when it had happened in half of them; None where it never had."""
    return next((fall.seconds for fall in curve(durations) if fall.not_yet <= 0.5), None)
