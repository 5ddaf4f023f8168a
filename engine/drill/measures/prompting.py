"""How far the critical acts hung on help: from a menu on, an act is recognised, never recalled."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.drill.entries import Level
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.times import Timed


def prompted(acts: Sequence[Timed]) -> tuple[Timed, ...]:
    """Return the critical acts done that were chosen from a menu or told."""
    return tuple(each for each in acts if each.done and each.done.level >= Level.MENU)


def dependence(acts: Sequence[Timed]) -> Share:
    """Return how many of the critical acts done were chosen from a menu or told."""
    return Share(len(prompted(acts)), sum(each.done is not None for each in acts))
