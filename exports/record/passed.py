"""What a walk passed silently, told in one calm line each."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import (
    BoundReached,
    CameBack,
    Decided,
    Passage,
    PassedOver,
    Silent,
)
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Branch, Question
from chamberwise.exports.record.naming import (
    answer_label,
    finding_title,
    pathway_title,
    step_name,
    value_labels,
)


def told(library: Library, passage: Passage) -> tuple[str, ...]:
    """Return one line for each question, branch, bound and return passed on the way."""
    return tuple(_told(library, passage.state, silent) for silent in passage.silent)


def _told(library: Library, state: State, silent: Silent) -> str:
    match silent:
        case PassedOver(place, answer):
            return _passed_over(library, place, answer)
        case Decided(place, by):
            return _decided(library, state, place, by)
        case BoundReached(place):
            bound = library.step(place).bound
            times = bound.at_most if bound else 0
            return _("Tried {number} times, the most allowed here: {step}").format(
                number=times, step=step_name(library, place)
            )
        case CameBack(outcome, _place):
            title = pathway_title(library, outcome.pathway)
            return _("Back from {title}: {outcome}").format(
                title=title, outcome=step_name(library, outcome)
            )


def _passed_over(library: Library, place: Place, answer_id: str) -> str:
    step = library.step(place)
    assert isinstance(step, Question)
    finding = library.finding(place.pathway, step.ask)
    answer = next(each for each in step.answers if each.id == answer_id)
    what = f"{finding.title}: {answer_label(finding, answer)}"
    if finding.choice is not None:
        return _("Set by the unit, so not asked: {what}").format(what=what)
    return _("Already known, so not asked: {what}").format(what=what)


def _decided(library: Library, state: State, place: Place, by: int | str) -> str:
    step = library.step(place)
    assert isinstance(step, Branch)
    rows = [step.rows[by]] if isinstance(by, int) else list(step.rows)
    named = dict.fromkeys(name for row in rows for name, _rest in row.when.terms)
    known = "; ".join(_known(library, state, place, name) for name in named)
    if by == "not known":
        return _("Not decided by what is known, so the safe way: {known}").format(known=known)
    return _("Decided by what is known: {known}").format(known=known)


def _known(library: Library, state: State, place: Place, name: str) -> str:
    words = library.words(place.pathway)
    field = layout_of(library).field(place.pathway, name)
    title = finding_title(words, name)
    possible = state.possible & field.every
    if possible == field.every:
        stale = state.last_seen & field.every
        if not stale:
            return _("{finding}: unknown").format(finding=title)
        return _("{finding}: not sure now, last {values}").format(
            finding=title, values=value_labels(field.finding, field.values(stale))
        )
    return f"{title}: {value_labels(field.finding, field.values(possible))}"
