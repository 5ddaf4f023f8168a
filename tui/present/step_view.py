"""The step a walk stands on, as everything a team needs to see of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Action, Handover, Outcome, Question
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.content import Cited, Owed
from chamberwise.exports.record.naming import pathway_title, sentence
from chamberwise.exports.record.owed import owed
from chamberwise.exports.record.passed import told
from chamberwise.exports.record.stale import asked_again
from chamberwise.exports.record.standing import marks
from chamberwise.tui.present.answers import AnswerView, answers
from chamberwise.tui.present.cautions import CautionView, cautions
from chamberwise.tui.present.choices import ChoiceView, choices
from chamberwise.tui.present.figures import CaseGiven, FiguresView, figures
from chamberwise.tui.present.lines import DutyView, duties, kit
from chamberwise.tui.present.sources import reasons


class StepKind(StrEnum):
    """What is wanted of the team."""

    QUESTION = "question"
    ACTION = "action"
    HANDOVER = "handover"
    OUTCOME = "outcome"
    STUCK = "stuck"


@dataclass(frozen=True, slots=True)
class Where:
    """Where a walk is: the pathway, its marks, the phase, and the number of the step."""

    title: str
    edition: str
    marks: tuple[str, ...]
    phase: str
    phase_number: int
    phases: int
    step_number: int
    back_to: str
    """The pathway that a handover comes back to, if any."""

    def titled(self, title: str) -> str:
        """Return a page's title behind the marks that every page must show."""
        return "  ".join((*self.marks, title))


@dataclass(frozen=True, slots=True)
class StepView:
    """One step as shown: `text` is the question, the headline or the outcome."""

    kind: StepKind
    where: Where
    text: str
    passed: tuple[str, ...]
    asked_again: str
    cautions: tuple[CautionView, ...]
    answers: tuple[AnswerView, ...]
    duties: tuple[DutyView, ...]
    kit: tuple[str, ...]
    choices: tuple[ChoiceView, ...]
    time_target: int | None
    round: tuple[int, int] | None
    why: str
    sources: tuple[Cited, ...]
    owed: tuple[Owed, ...]
    figures: tuple[FiguresView, ...]
    last_answer: str

    def answer(self, typed: str) -> AnswerView | None:
        """Return the answer of a number, name or label as typed."""
        wanted = typed.strip().casefold().replace("-", " ")
        for answer in self.answers:
            names = (str(answer.key), answer.id.replace("-", " "), answer.label.replace("-", " "))
            if wanted in (name.casefold() for name in names):
                return answer
        return None


def step_view(
    walk: Walk, today: date, last_answer: str = "", case: CaseGiven | None = None
) -> StepView:
    """Return the step a walk stands on, with the figures of a case of the brief if there is one."""
    place = walk.state.place
    why, sources = reasons(walk)
    return StepView(
        kind=_kind(walk),
        where=where(walk, today),
        text=_text(walk),
        passed=told(walk.library, walk.last),
        asked_again=asked_again(walk),
        cautions=cautions(walk),
        answers=answers(walk),
        duties=duties(walk),
        kit=kit(walk),
        choices=choices(walk),
        time_target=walk.step.time_target if isinstance(walk.step, Action) else None,
        round=_round(walk, walk.state.times_entered(place)),
        why=why,
        sources=sources,
        owed=owed(walk) if walk.is_over else (),
        figures=figures(walk, case),
        last_answer=last_answer,
    )


def where(walk: Walk, today: date) -> Where:
    """Return where a walk is."""
    pathway = walk.library.pathways[walk.state.place.pathway]
    phases = tuple(pathway.phases)
    phase = walk.step.phase
    back = walk.state.way_back
    return Where(
        title=pathway.title,
        edition=pathway.edition,
        marks=marks(pathway, today),
        phase=pathway.phases.get(phase, phase),
        phase_number=phases.index(phase) + 1 if phase in phases else 0,
        phases=len(phases),
        step_number=len(walk.legs) + 1,
        back_to=pathway_title(walk.library, back[-1].pathway) if back else "",
    )


def _kind(walk: Walk) -> StepKind:
    if walk.is_stuck:
        return StepKind.STUCK
    match walk.step:
        case Question():
            return StepKind.QUESTION
        case Action():
            return StepKind.ACTION
        case Handover():
            return StepKind.HANDOVER
        case _other:
            return StepKind.OUTCOME


STUCK = N_("This pathway does not say how to go on from here. Stop, and follow local protocol.")


def _text(walk: Walk) -> str:
    if walk.is_stuck:
        return _(STUCK)
    match walk.step:
        case Question(question=text) | Outcome(title=text):
            return text
        case Handover(to=to):
            return _("Over to: {pathway}").format(pathway=pathway_title(walk.library, to))
        case _other:
            return sentence(walk.step.short)


def _round(walk: Walk, times: int) -> tuple[int, int] | None:
    bound = walk.step.bound
    return (times, bound.at_most) if bound and bound.at_most > 1 else None
