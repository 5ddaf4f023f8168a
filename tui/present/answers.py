"""The answers a question offers now, numbered as they are given."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import offered
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.step import CANNOT_TELL, Answer, Question
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.naming import answer_label

UNSURE = N_("Not sure is an answer too; it has a safe way of its own")


@dataclass(frozen=True, slots=True)
class AnswerView:
    """One answer: the number to press, its name, its label, and the sign by which it is told."""

    key: int
    id: str
    label: str
    sign: str

    @property
    def is_cannot_tell(self) -> bool:
        """Whether it says that nobody can tell."""
        return self.id == CANNOT_TELL


def answers(walk: Walk) -> tuple[AnswerView, ...]:
    """Return the answers offered, "cannot tell" last; none where nothing is asked."""
    step = walk.step
    if not isinstance(step, Question):
        return ()
    field = layout_of(walk.library).field(walk.state.place.pathway, step.ask)
    given = sorted(offered(walk.library, walk.state, step), key=lambda each: each.id == CANNOT_TELL)
    return tuple(
        AnswerView(
            number, answer.id, answer_label(field.finding, answer), _sign(walk, field, answer)
        )
        for number, answer in enumerate(given, start=1)
    )


def _sign(walk: Walk, field: Field, answer: Answer) -> str:
    if answer.id == CANNOT_TELL:
        return _(UNSURE)
    told = _possible(walk.state, field, answer)
    values = [value for value in field.finding.values if value.id in told and value.sign]
    if len(values) > 1 and answer.label:
        return _("; or ").join(f"{value.label}: {value.sign}" for value in values)
    return _("; or ").join(value.sign for value in values)


def _possible(state: State, field: Field, answer: Answer) -> tuple[str, ...]:
    return field.values(field.mask(answer.means) & state.possible)
