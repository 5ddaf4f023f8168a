"""A library as walks and rules go by it: steps, arrows, acts, effects; no texts, no sources.

What is found out about walks is found out in this form. Libraries that differ in wording alone have
one and the same bare library, so what was found for one stands for the other.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from functools import lru_cache
from typing import TypeAlias

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, Status
from chamberwise.engine.model.rule import HarmSeverity, Rule
from chamberwise.engine.model.step import (
    Action,
    Answer,
    Branch,
    Caution,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)
from chamberwise.engine.model.words import About, Act, Choice, Finding, Value, Words

BareWords: TypeAlias = tuple[tuple[tuple[str, Finding], ...], tuple[tuple[str, Act], ...]]
BarePathway: TypeAlias = tuple[PathwayId, StepId, tuple[tuple[StepId, Step], ...], BareWords]
BareLibrary: TypeAlias = tuple[BareWords, tuple[BarePathway, ...]]
"""The whole content of a bare library, as a value that can be compared and looked up by."""

_NO_DAY = date.min


@lru_cache(maxsize=8)
def bare(library: Library) -> Library:
    """Return a library's bare form: one and the same object for equal content."""
    pathways = tuple([_pathway(name, each) for name, each in library.pathways.items()])
    return _library((_words(library.shared), pathways))


@lru_cache(maxsize=8)
def _library(content: BareLibrary) -> Library:
    """Return the bare library of some content: it holds nothing that the content does not."""
    shared, pathways = content
    return Library(_as_words(shared), {each[0]: _as_pathway(each) for each in pathways})


def bare_rule(rule: Rule) -> Rule:
    """Return what a rule asks of walks, and its name."""
    return Rule(
        rule.id,
        "",
        rule.pattern,
        rule.of,
        rule.by,
        rule.times,
        rule.scope,
        "",
        HarmSeverity.CATASTROPHIC,
        "",
    )


def _as_pathway(content: BarePathway) -> Pathway:
    name, start, steps, words = content
    return Pathway(
        id=name,
        title="",
        summary="",
        edition="",
        status=Status.DRAFT,
        authors=(),
        approved_by=None,
        approved_on=None,
        reviewed=_NO_DAY,
        review_by=_NO_DAY,
        start=start,
        phases={},
        steps=dict(steps),
        words=_as_words(words),
        cases=None,
        accepted=(),
    )


def _as_words(content: BareWords) -> Words:
    findings, acts = content
    return Words(findings=dict(findings), acts=dict(acts))


def _pathway(name: PathwayId, pathway: Pathway) -> BarePathway:
    steps = tuple([(key, bare_step(step)) for key, step in pathway.steps.items()])
    return name, pathway.start, steps, _words(pathway.words)


def _words(words: Words) -> BareWords:
    return _findings(words.findings), _acts(words.acts)


def _findings(findings: Mapping[str, Finding]) -> tuple[tuple[str, Finding], ...]:
    return tuple([(name, _finding(each)) for name, each in findings.items()])


def _acts(acts: Mapping[str, Act]) -> tuple[tuple[str, Act], ...]:
    return tuple([(name, Act(each.id, "", each.effects)) for name, each in acts.items()])


def _finding(finding: Finding) -> Finding:
    chosen = finding.choice.chosen if finding.choice else None
    return Finding(
        finding.id,
        "",
        About.EYE,
        tuple([Value(value.id, "") for value in finding.values]),
        finding.may_change_by_itself,
        choice=Choice(None, "", chosen) if chosen is not None else None,
    )


def bare_step(step: Step) -> Step:
    """Return what a step is for walks and rules."""
    name, bound = step.id, step.bound
    cautions = tuple([Caution(each.signal, "", "", each.guards) for each in step.cautions])
    match step:
        case Question(ask=ask):
            answers = tuple([Answer(each.id, each.means, each.go_to) for each in step.answers])
            return Question(
                id=name,
                phase="",
                cautions=cautions,
                bound=bound,
                ask=ask,
                question="",
                answers=answers,
            )
        case Action(go_to=go_to, effects=effects):
            return Action(
                id=name,
                phase="",
                cautions=cautions,
                bound=bound,
                lines=_lines(step.lines),
                go_to=go_to,
                effects=effects,
            )
        case Branch(rows=rows, otherwise=otherwise, not_known=not_known):
            return Branch(
                id=name,
                phase="",
                cautions=cautions,
                bound=bound,
                rows=rows,
                otherwise=otherwise,
                not_known=not_known,
            )
        case Handover(to=to, on_return=back):
            return Handover(
                id=name, phase="", cautions=cautions, bound=bound, to=to, says="", on_return=back
            )
        case Outcome():
            return Outcome(
                id=name, phase="", cautions=cautions, bound=bound, title="", owed=_lines(step.owed)
            )


def _lines(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    return tuple([Line(line.who, "", act=line.act) for line in lines])
