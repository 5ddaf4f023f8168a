"""The way so far: the moves that stand, oldest first."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Answered
from chamberwise.engine.model.step import Question
from chamberwise.engine.walk.walk import Leg, Walk
from chamberwise.exports.record.naming import answer_label, step_name


@dataclass(frozen=True, slots=True)
class TrailRow:
    """One step of the way: its number, when it was left, what it was, and what was answered."""

    number: int
    at: datetime
    text: str
    answer: str


def trail(walk: Walk) -> tuple[TrailRow, ...]:
    """Return the way back, oldest step first."""
    return tuple(
        TrailRow(number, leg.at, step_name(walk.library, leg.before.place), _answer(walk, leg))
        for number, leg in enumerate(walk.legs, start=1)
    )


def _answer(walk: Walk, leg: Leg) -> str:
    step = walk.library.step(leg.before.place)
    if not isinstance(step, Question) or not isinstance(leg.move, Answered):
        return _("done")
    answer = next(each for each in step.answers if each.id == leg.move.answer)
    return answer_label(walk.library.finding(leg.before.place.pathway, step.ask), answer)
