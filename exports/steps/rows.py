"""From a pathway to the rows of a sheet of steps, and what such a sheet cannot hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.graph.targets import all_targets
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    Answer,
    Branch,
    Handover,
    Line,
    Outcome,
    Question,
    Step,
)
from chamberwise.engine.model.words import NO_EFFECTS, Finding, Words
from chamberwise.engine.spreadsheet.steps import OR

Cells = dict[str, str]


def rows_of(pathway: Pathway) -> list[Cells]:
    """Return the rows of what a sheet can hold: phases, own words, then the steps."""
    held = without_what_is_lost(pathway)
    rows = [_row("phase", name, title) for name, title in held.phases.items()]
    for finding in held.words.findings.values():
        rows += _finding(finding)
    for act in held.words.acts.values():
        rows.append(_row("act", act.id, act.title, sources="; ".join(act.sources)))
    for step in _entry_first(held):
        rows += _step(step)
    return rows


def _entry_first(pathway: Pathway) -> list[Step]:
    first = [step for name, step in pathway.steps.items() if name == pathway.start]
    return [*first, *(step for name, step in pathway.steps.items() if name != pathway.start)]


def without_what_is_lost(pathway: Pathway) -> Pathway:
    """Return a pathway with only what a sheet can hold; its head is as it was."""
    findings = {
        name: replace(each, may_change_by_itself=False)
        for name, each in pathway.words.findings.items()
        if each.choice is None
    }
    acts = {
        name: replace(each, effects=NO_EFFECTS, calls_for_help=False)
        for name, each in pathway.words.acts.items()
    }
    steps = {
        name: _held(step) for name, step in pathway.steps.items() if not isinstance(step, Branch)
    }
    return replace(
        pathway,
        words=Words(findings=findings, acts=acts),
        steps=steps,
        cases=None,
        accepted=(),
        wall_chart=None,
    )


def _held(step: Step) -> Step:
    step = replace(step, cautions=(), plan=(), work=())
    match step:
        case Action():
            lines = tuple(replace(each, sources=(), when="") for each in step.lines)
            step = replace(step, lines=lines, needs=(), choices=(), effects=NO_EFFECTS)
            return replace(step, time_target=None)
        case Outcome():
            owed = tuple(replace(each, sources=(), said_aloud=False) for each in step.owed)
            return replace(step, owed=owed)
    return step


def lost(pathway: Pathway) -> Iterator[str]:
    """Yield, as sentences, what of a pathway a sheet of steps cannot hold."""
    for name, step in pathway.steps.items():
        told = [*(_lost_branch(step, pathway) if isinstance(step, Branch) else _lost_of(step))]
        if told:
            yield _("Step `{name}`: {told}.").format(name=name, told=", ".join(told))
    words = pathway.words
    tables = {
        "choices": any(each.choice for each in words.findings.values()),
        "duties": words.duties,
        "kit": words.kit,
        "sources": words.sources,
        "rules": words.rules,
        "cases": pathway.cases,
        "wall chart": pathway.wall_chart,
        "accepted": pathway.accepted,
    }
    yield from (
        _("The table `{table}`.").format(table=table)
        for table, has_some in tables.items()
        if has_some
    )
    restless = [name for name, each in words.findings.items() if each.may_change_by_itself]
    if restless:
        yield _("That these findings may change by themselves: {restless}.").format(
            restless=", ".join(restless)
        )
    acts = [
        name for name, act in words.acts.items() if act.calls_for_help or act.effects != NO_EFFECTS
    ]
    if acts:
        yield _("What these acts make known or stale, or that they call for help: {acts}.").format(
            acts=", ".join(acts)
        )


def _lost_branch(branch: Branch, pathway: Pathway) -> Iterator[str]:
    yield _("the branch")
    leading = {
        step.id: None
        for step, target in all_targets(pathway)
        if target.step == branch.id and not isinstance(step, Branch)
    }
    if leading:
        steps = ", ".join(f"`{each}`" for each in leading)
        yield _("to which rows lead that need another step ({steps})").format(steps=steps)


def _lost_of(step: Step) -> Iterator[str]:
    if step.cautions:
        yield _("its cautions")
    if step.plan:
        yield _("its plan")
    if step.work:
        yield _("the calculation it refers to")
    match step:
        case Action():
            if step.needs or step.choices or step.time_target:
                yield _("its kit, choices or time target")
            if step.effects != NO_EFFECTS:
                yield _("what it makes known or stale")
            if any(line.sources for line in step.lines):
                yield _("the sources of single lines")
        case Outcome():
            if any(line.sources or line.said_aloud for line in step.owed):
                yield _("of what is owed, its sources and whether it is said aloud")


def _row(kind: str, name: str = "", text: str = "", **cells: str) -> Cells:
    return {"row": kind, "name": name, "text": text, **cells}


def _finding(finding: Finding) -> Iterator[Cells]:
    sources = "; ".join(finding.sources)
    yield _row("finding", finding.id, finding.title, about=str(finding.about), sources=sources)
    for value in finding.values:
        said = "; ".join(value.sources)
        yield _row("value", value.id, value.label, sign=value.sign, sources=said)


def _step(step: Step) -> Iterator[Cells]:
    shared = {
        "phase": step.phase,
        "short": step.short,
        "why": step.why,
        "sources": "; ".join(step.sources),
        "at most": str(step.bound.at_most) if step.bound else "",
        "after that": step.bound.after_that if step.bound else "",
    }
    match step:
        case Question():
            yield _row("question", step.id, step.question) | shared | {"finding": step.ask}
            yield from map(_answer, step.answers)
        case Action():
            first, *rest = step.lines
            yield _line(first) | shared | {"name": step.id, "go to": step.go_to}
            yield from map(_line, rest)
        case Handover():
            yield _row("hand over", step.id, step.says) | shared | {"go to": step.to}
            for outcome, to in step.on_return:
                yield _row("back", outcome) | {"go to": to}
        case Outcome():
            yield _row("end", step.id, step.title) | shared
            for line in step.owed:
                yield _line(line) | {"row": "owed", "when": line.when}


def _answer(answer: Answer) -> Cells:
    own = answer.means in ((), (answer.id,))
    value = "" if own else OR.join(answer.means)
    return _row("answer", answer.id, answer.label) | {"value": value, "go to": answer.go_to}


def _line(line: Line) -> Cells:
    kind = "say" if line.said_aloud else "do"
    return _row(kind, "", line.text, who=line.who, act=line.act or "")
