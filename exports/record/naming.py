"""Names for steps, answers and sources, as a person reads them."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Branch,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
)
from chamberwise.engine.model.words import Finding, Mark, ValueId, Words
from chamberwise.exports.language.joining import either

READER = N_("Reader")
"""Who reads the pathway aloud, and so says what a handover says."""

MARK_WORDS = {
    Mark.READ: N_("read at its address"),
    Mark.MEMORY: N_("from memory, not read again"),
    Mark.COMMON_PRACTICE: N_("common practice, no source"),
    Mark.DERIVED: N_("our own inference"),
    Mark.LOCAL: N_("the unit's own rule"),
}


def step_name(library: Library, place: Place) -> str:
    """Return what a step is called where there is room for one line only."""
    step = library.step(place)
    match step:
        case Question():
            return step.question
        case Action():
            return step.short or (sentence(step.lines[0].text) if step.lines else step.id)
        case Branch():
            return step.short or _("Goes on by what is known: {findings}").format(
                findings=", ".join(_decides_on(library, place))
            )
        case Handover():
            return _("Over to: {title}").format(title=pathway_title(library, step.to))
        case Outcome():
            return step.title


def _decides_on(library: Library, place: Place) -> tuple[str, ...]:
    step = library.step(place)
    assert isinstance(step, Branch)
    named = dict.fromkeys(name for row in step.rows for name, _rest in row.when.terms)
    return tuple(finding_title(library.words(place.pathway), name) for name in named)


def pathway_title(library: Library, pathway: PathwayId) -> str:
    """Return the title of a pathway, or its name where the library does not have it."""
    return library.pathways[pathway].title if pathway in library.pathways else pathway


def finding_title(words: Words, finding: str) -> str:
    """Return the title of a finding, or its name where it is not defined."""
    return words.findings[finding].title if finding in words.findings else finding


def duty_title(words: Words, who: str) -> str:
    """Return the title of a duty, or its name where it is not defined."""
    return words.duties[who].title if who in words.duties else who


def act_title(words: Words, act: str) -> str:
    """Return the title of an act, or its name where it is not defined."""
    return words.acts[act].title if act in words.acts else act


def value_labels(finding: Finding, values: tuple[ValueId, ...]) -> str:
    """Return the labels of some values of a finding, joined by "or"."""
    found = (finding.value(value) for value in values)
    return either(value.label for value in found if value is not None)


def answer_label(finding: Finding, answer: Answer) -> str:
    """Return the words to answer with."""
    if answer.id == CANNOT_TELL:
        return answer.label or _("Cannot tell")
    return answer.label or value_labels(finding, answer.means) or answer.id


def action_name(action: Action, words: Words) -> str:
    """Return what an action is called in a sentence: its acts, else its short wording or text."""
    acts = [act_title(words, line.act) for line in action.lines if line.act]
    if acts:
        return acts[0]
    return action.short or (sentence(action.lines[0].text) if action.lines else action.id)


def sentence(text: str) -> str:
    """Return text without its closing full stop."""
    return text.rstrip().removesuffix(".")


def line_voice(line: Line) -> str:
    """Return how a line is carried out: said aloud or done."""
    return _("says") if line.said_aloud else _("does")
