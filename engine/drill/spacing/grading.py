"""How well a critical act went, graded by what was done and not by how it felt."""

from __future__ import annotations

from collections.abc import Iterable
from enum import IntEnum

from chamberwise.engine.drill.entries import Certainty, Level
from chamberwise.engine.drill.measures.measured import Measured
from chamberwise.engine.drill.measures.times import Timed
from chamberwise.engine.model.words import ActId


class Grade(IntEnum):
    """The four grades of the FSRS algorithm, with its numbers."""

    AGAIN = 1
    HARD = 2
    GOOD = 3
    EASY = 4


def grades(of: Measured) -> tuple[tuple[ActId, Grade], ...]:
    """Return the grade of every critical act that was due; one never reached has none."""
    wrong = set(_wrong(of))
    return tuple((each.critical.act, _grade(each, wrong)) for each in of.acts if each.was_due)


def _wrong(of: Measured) -> Iterable[ActId]:
    """Yield what did harm, what came before its turn by a hard pair, and what was surely wrong."""
    for harm in of.harms:
        if harm.is_grave:
            yield getattr(harm.event.entry, "act", "")
    for order, _ in of.orders.broken:
        if order.is_hard:
            yield order.then
    for event in of.confident_errors:
        yield getattr(event.entry, "act", "")


def _grade(timed: Timed, wrong: set[ActId]) -> Grade:
    done = timed.done
    if done is None or timed.critical.act in wrong or done.level is Level.TOLD:
        return Grade.AGAIN
    soft, took = timed.critical.soft, timed.duration
    if done.level > Level.RECALLED or (soft is not None and took and took.seconds > soft):
        return Grade.HARD
    if soft is not None and took and took.seconds * 2 <= soft and done.certainty is Certainty.SURE:
        return Grade.EASY
    return Grade.GOOD
