"""Every text of a pathway that is read by people: of what kind, which words, and where."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Handover, Line, Outcome, Question, Step
from chamberwise.engine.model.words import Finding, Words


@dataclass(frozen=True, slots=True)
class Text:
    """One text and its place in the file."""

    kind: TextKind
    words: str
    pointer: Pointer


def texts(pathway: Pathway) -> Iterator[Text]:
    """Yield the texts of a pathway in document order, empty ones left out."""
    for text in _all(pathway):
        if text.words:
            yield text


def _all(pathway: Pathway) -> Iterator[Text]:
    yield Text(TextKind.TITLE, pathway.title, ("title",))
    yield Text(TextKind.REASON, pathway.summary, ("summary",))
    for name, title in pathway.phases.items():
        yield Text(TextKind.TITLE, title, ("phases", name))
    yield from of_words(pathway.words)
    for step in pathway.steps.values():
        yield from _of_step(step)


def of_words(words: Words) -> Iterator[Text]:
    """Yield the texts of definitions; citations are left as their authors wrote them."""
    for finding in words.findings.values():
        yield from _of_finding(finding)
    for act in words.acts.values():
        yield Text(TextKind.TITLE, act.title, ("acts", act.id, "title"))
    for duty in words.duties.values():
        yield Text(TextKind.TITLE, duty.title, ("duties", duty.id, "title"))
    for item in words.kit.values():
        for key, said in (("title", item.title), ("amount", item.amount)):
            yield Text(TextKind.TITLE, said, ("kit", item.id, key))
        yield Text(TextKind.REASON, item.why, ("kit", item.id, "why"))
    for rule in words.rules.values():
        at: Pointer = ("rules", rule.id)
        yield Text(TextKind.TITLE, rule.title, (*at, "title"))
        yield Text(TextKind.CAUTION, rule.harm, (*at, "harm"))
        yield Text(TextKind.REMEDY, rule.instead, (*at, "instead"))


def _of_finding(finding: Finding) -> Iterator[Text]:
    choice = finding.choice
    table, values, says = ("findings", "values", "sign")
    if choice:
        table, values, says = ("choices", "positions", "says")
    at: Pointer = (table, finding.id)
    yield Text(TextKind.TITLE, finding.title, (*at, "title"))
    for value in finding.values:
        here: Pointer = (*at, values, value.id)
        yield Text(TextKind.ANSWER, value.label, (*here, "label"))
        yield Text(TextKind.REASON if choice else TextKind.SIGN, value.sign, (*here, says))
    if choice:
        yield Text(TextKind.REASON, choice.because, (*at, "because"))


def _of_step(step: Step) -> Iterator[Text]:
    at: Pointer = ("steps", step.id)
    for place, caution in enumerate(step.cautions):
        here: Pointer = (*at, "cautions", place)
        yield Text(TextKind.CAUTION, caution.harm, (*here, str(caution.signal)))
        yield Text(TextKind.INSTEAD, caution.instead, (*here, "instead"))
    match step:
        case Question():
            yield Text(TextKind.QUESTION, step.question, (*at, "question"))
            for answer in step.answers:
                yield Text(TextKind.ANSWER, answer.label, (*at, "answers", answer.id, "label"))
        case Action():
            yield from _lines(step.lines, (*at, "do"))
        case Handover():
            yield Text(TextKind.SPOKEN, step.says, (*at, "says"))
        case Outcome():
            yield Text(TextKind.TITLE, step.title, (*at, "outcome"))
            yield from _lines(step.owed, (*at, "owed"))
        case _:
            pass
    yield Text(TextKind.REASON, step.why, (*at, "why"))
    yield Text(TextKind.TITLE, step.short, (*at, "short"))


def _lines(lines: Iterable[Line], at: Pointer) -> Iterator[Text]:
    for place, line in enumerate(lines):
        kind, key = TextKind.INSTRUCTION, "does"
        if line.said_aloud:
            kind, key = TextKind.SPOKEN, "says"
        yield Text(kind, line.text, (*at, place, key))
