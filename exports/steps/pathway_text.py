"""The file of a pathway that came out of a sheet of steps. Every text is quoted."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from datetime import date

from chamberwise.engine.model.step import (
    Action,
    Answer,
    Handover,
    Line,
    Outcome,
    Question,
    Step,
)
from chamberwise.engine.spreadsheet.steps import Steps
from chamberwise.exports.scaffold.render import REVIEW_AFTER, Beginning


def pathway_text(made: Steps, beginning: Beginning, today: date, schema: str) -> str:
    """Return the file: the head as given, then what the sheet holds, in its order."""
    return "\n".join(_lines(made, beginning, today, schema)) + "\n"


def _lines(made: Steps, beginning: Beginning, today: date, schema: str) -> Iterator[str]:
    yield f"# yaml-language-server: $schema={schema}"
    yield "# Made from a sheet of steps. Cautions, effects, kit and branches are added here."
    yield f"pathway: {beginning.name}"
    yield f"title: {_quoted(beginning.title)}"
    yield f"summary: {_quoted(beginning.summary)}"
    yield "edition: 0.1"
    yield "status: draft"
    yield f"authors: [{_quoted(beginning.author)}]"
    yield f"reviewed: {today.isoformat()}"
    yield f"review by: {(today + REVIEW_AFTER).isoformat()}"
    yield f"start: {next(iter(made.steps))}"
    yield ""
    yield "phases:"
    for name, title in made.phases.items():
        yield f"  {name}: {_quoted(title)}"
    yield from _words(made)
    yield ""
    yield "steps:"
    for step in made.steps.values():
        yield f"  {step.id}:"
        yield from (f"    {line}" for line in _step(step))
        yield ""


def _words(made: Steps) -> Iterator[str]:
    if made.words.findings:
        yield "\nfindings:"
    for finding in made.words.findings.values():
        yield f"  {finding.id}:"
        yield f"    title: {_quoted(finding.title)}"
        yield f"    about: {finding.about}"
        yield "    values:"
        for value in finding.values:
            sign = f", sign: {_quoted(value.sign)}" if value.sign else ""
            sources = f", sources: {_listed(value.sources)}" if value.sources else ""
            yield f"      {value.id}: {{label: {_quoted(value.label)}{sign}{sources}}}"
        if finding.sources:
            yield f"    sources: {_listed(finding.sources)}"
    if made.words.acts:
        yield "\nacts:"
    for act in made.words.acts.values():
        sources = f", sources: {_listed(act.sources)}" if act.sources else ""
        yield f"  {act.id}: {{title: {_quoted(act.title)}{sources}}}"


def _step(step: Step) -> Iterator[str]:
    yield f"phase: {step.phase}"
    if step.short:
        yield f"short: {_quoted(step.short)}"
    yield from _of_kind(step)
    if step.why:
        yield f"why: {_quoted(step.why)}"
    if step.sources:
        yield f"sources: {_listed(step.sources)}"
    if step.bound:
        yield f"at most: {step.bound.at_most}"
        yield f"after that: {step.bound.after_that}"
    if isinstance(step, Action):
        yield f"go to: {step.go_to}"


def _of_kind(step: Step) -> Iterator[str]:
    match step:
        case Question():
            yield f"ask: {step.ask}"
            yield f"question: {_quoted(step.question)}"
            yield from _under("answers", map(_answer, step.answers))
        case Action():
            yield from _under("do", (f"- {_line(each)}" for each in step.lines))
        case Handover():
            yield f"hand over to: {step.to}"
            yield f"says: {_quoted(step.says)}"
            yield from _under("on return", (f"{by}: {to}" for by, to in step.on_return))
        case Outcome():
            yield f"outcome: {_quoted(step.title)}"
            yield from _under("owed", (f"- {_line(each)}" for each in step.owed))


def _under(key: str, lines: Iterable[str]) -> Iterator[str]:
    found = [f"  {line}" for line in lines]
    yield from [f"{key}:", *found] if found else []


def _answer(answer: Answer) -> str:
    if answer.means in ((), (answer.id,)) and not answer.label:
        return f"{answer.id}: {answer.go_to}"
    label = f"label: {_quoted(answer.label)}, " if answer.label else ""
    several = answer.means not in ((), (answer.id,))
    means = f"means: {_listed(answer.means)}, " if several else ""
    return f"{answer.id}: {{{label}{means}go to: {answer.go_to}}}"


def _line(line: Line) -> str:
    voice = "says" if line.said_aloud else "does"
    act = f", act: {line.act}" if line.act else ""
    when = f", when: {_quoted(line.when)}" if line.when else ""
    return f"{{who: {line.who}, {voice}: {_quoted(line.text)}{act}{when}}}"


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _listed(names: Iterable[str]) -> str:
    return f"[{', '.join(names)}]"
