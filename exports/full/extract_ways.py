"""The ways out of a step, with the words on each, and what a step is called."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    Row,
    Step,
)
from chamberwise.engine.model.words import Finding, Words
from chamberwise.exports.full.content import ON, Way
from chamberwise.exports.full.quantities import joined
from chamberwise.exports.language.joining import either
from chamberwise.exports.record.naming import (
    answer_label,
    finding_title,
    pathway_title,
    value_labels,
)


def heading(library: Library, pathway: PathwayId, step: Step) -> str:
    """Return what is printed large: the question, the headline, the chart handed over to."""
    match step:
        case Question():
            return step.question
        case Branch():
            return step.short or _("Go on by what is known")
        case Handover():
            return _("Over to: {title}").format(title=pathway_title(library, step.to))
        case Outcome():
            return step.title
        case Action():
            return step.short


def note(library: Library, pathway: PathwayId, step: Step) -> str:
    """Return what a handover has to add about ends of the other pathway that lead nowhere here."""
    if not isinstance(step, Handover):
        return ""
    if not step.on_return:
        return _("The walk goes over for good and ends in that chart.")
    other = library.pathways.get(step.to)
    ends = (
        {each.id for each in other.steps.values() if isinstance(each, Outcome)} if other else set()
    )
    if ends - {outcome for outcome, _rest in step.on_return}:
        return _("Every other end of that chart ends the walk there.")
    return ""


def ways(
    library: Library, pathway: PathwayId, step: Step, numbers: Mapping[str, int]
) -> tuple[Way, ...]:
    """Return every exit in document order, that of the bound last."""
    words = library.words(pathway)
    found = list(_own(library, words, step))
    if step.bound:
        number = step.bound.at_most
        told = ngettext("At most once, then", "At most {number}\u00a0times, then", number)
        found.append(
            (
                "after that",
                told.format(number=number),
                step.bound.after_that,
                "",
            )
        )
    return tuple(
        Way(name, joined(label), numbers[to], joined(sign)) for name, label, to, sign in found
    )


def _own(library: Library, words: Words, step: Step) -> Iterator[tuple[str, str, str, str]]:
    match step:
        case Question():
            finding = words.findings.get(step.ask)
            for answer in step.answers:
                label = answer_label(finding, answer) if finding else answer.label or answer.id
                yield answer.id, label, answer.go_to, _sign(finding, answer.means)
        case Action():
            yield ON, _("Go on"), step.go_to, ""
        case Branch():
            yield from _of_branch(words, step)
        case Handover():
            for outcome, back in step.on_return:
                yield (
                    outcome,
                    _("Back with: {end}").format(end=_end(library, step.to, outcome)),
                    back,
                    "",
                )


def _of_branch(words: Words, step: Branch) -> Iterator[tuple[str, str, str, str]]:
    for place, row in enumerate(step.rows):
        yield f"row {place + 1}", _when(words, row), row.go_to, ""
    if step.otherwise is not None:
        yield "otherwise", _("Otherwise"), step.otherwise, ""
    if step.not_known is not None:
        yield "not known", _("Not known"), step.not_known, ""


def _when(words: Words, row: Row) -> str:
    terms = []
    for name, values in row.when.terms:
        finding = words.findings.get(name)
        labels = value_labels(finding, values) if finding else either(values)
        terms.append(f"{finding_title(words, name)}: {labels}")
    return _("; and ").join(terms)


def _sign(finding: Finding | None, means: tuple[str, ...]) -> str:
    """One value's sign explains its answer; of several values the labels have to do."""
    value = finding.value(means[0]) if finding and len(means) == 1 else None
    return value.sign if value else ""


def _end(library: Library, pathway: PathwayId, outcome: str) -> str:
    other = library.pathways.get(pathway)
    step = other.steps.get(outcome) if other else None
    return step.title if isinstance(step, Outcome) else outcome
