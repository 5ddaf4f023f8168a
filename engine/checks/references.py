"""Every name that steps, definitions and rules use: of what kind, which one, and where."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from chamberwise.engine.checks.rules.places import Said, conditions, happenings, known_or_not
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import Action, Branch, Line, Outcome, Question, Step
from chamberwise.engine.model.words import Effects, Finding, Words


class Of(StrEnum):
    """What a name is the name of."""

    FINDING = N_("finding")
    CHOICE = N_("choice")
    ACT = N_("act")
    DUTY = N_("duty")
    KIT = N_("kit item")
    SOURCE = N_("source")
    PHASE = N_("phase")
    OUTCOME = N_("outcome")
    PATHWAY = N_("pathway")


def in_words(of: Of) -> str:
    """Return what a name is the name of, as a message says it."""
    return _(of.value)


@dataclass(frozen=True, slots=True)
class Reference:
    """One use of a name. `value_of` is set where a value of a finding is named."""

    of: Of
    name: str
    pointer: Pointer
    value_of: str | None = None


def references(pathway: Pathway) -> Iterator[Reference]:
    """Yield every name a pathway uses of words and phases, and in rules of its own."""
    for step in pathway.steps.values():
        yield from _of_step(step)
    yield from of_words(pathway.words)
    if pathway.cases:
        at: Pointer = ("cases",)
        yield from _names(Of.FINDING, pathway.cases.over, (*at, "over"))
        for key, pairs in (
            ("assume", pathway.cases.assume),
            ("asked again", pathway.cases.asked_again),
        ):
            for finding, value in pairs:
                yield from _values(finding, (value,), (*at, key, finding))
        for place, each in enumerate(pathway.cases.impossible):
            yield from _condition(each.when, (*at, "impossible", place, "when"))


def of_words(words: Words) -> Iterator[Reference]:
    """Yield every name that definitions use."""
    for act in words.acts.values():
        yield from _effects(act.effects, ("acts", act.id))
        yield from _names(Of.SOURCE, act.sources, ("acts", act.id, "sources"))
    for item in words.kit.values():
        yield from _names(Of.SOURCE, item.sources, ("kit", item.id, "sources"))
    for finding in words.findings.values():
        yield from _of_finding(finding)
    for rule in words.rules.values():
        yield from _of_rule(rule)


@lru_cache(maxsize=4096)
def _of_rule(rule: Rule) -> tuple[Reference, ...]:
    """Return the names a rule uses, kept by the rule's value: most rules outlive an edit."""
    said = (each for said in happenings(rule) for each in _of_happening(said))
    return (*said, *_names(Of.SOURCE, rule.sources, ("rules", rule.id, "sources")))


def _of_happening(said: Said) -> Iterator[Reference]:
    happening, at = said.happening, said.pointer
    yield from _names(Of.ACT, happening.acts, (*at, "act"))
    yield from _names(Of.DUTY, happening.by, (*at, "by"))
    yield from _names(Of.ACT, happening.warns_of, (*at, "warns of"))
    yield from _names(Of.FINDING, happening.asks, (*at, "asks"))
    yield from _names(Of.OUTCOME, happening.outcomes, (*at, "outcome"))
    yield from _names(Of.PATHWAY, happening.hands_over_to, (*at, "hands over to"))
    for key, condition in conditions(happening):
        yield from _condition(condition, (*at, key))
    for key, findings in known_or_not(happening):
        yield from _names(Of.FINDING, findings, (*at, key))


def _of_finding(finding: Finding) -> Iterator[Reference]:
    table, values = ("choices", "positions") if finding.choice else ("findings", "values")
    at: Pointer = (table, finding.id)
    yield from _names(Of.SOURCE, finding.sources, (*at, "sources"))
    for value in finding.values:
        yield from _names(Of.SOURCE, value.sources, (*at, values, value.id, "sources"))
    if finding.choice:
        for key, name in (
            ("suggested", finding.choice.suggested),
            ("chosen", finding.choice.chosen),
        ):
            if name:
                yield Reference(Of.FINDING, name, (*at, key), value_of=finding.id)


@lru_cache(maxsize=4096)
def _of_step(step: Step) -> tuple[Reference, ...]:
    """Return the names a step uses, kept by the step's value."""
    return tuple(_in_step(step))


def _in_step(step: Step) -> Iterator[Reference]:
    at: Pointer = ("steps", step.id)
    if step.phase:
        yield Reference(Of.PHASE, step.phase, (*at, "phase"))
    for place, caution in enumerate(step.cautions):
        here: Pointer = (*at, "cautions", place)
        if caution.guards:
            yield Reference(Of.ACT, caution.guards, (*here, "guards"))
        yield from _names(Of.SOURCE, caution.sources, (*here, "sources"))
    match step:
        case Question():
            yield from _of_question(step, at)
        case Action():
            yield from _of_action(step, at)
        case Branch():
            for place, row in enumerate(step.rows):
                yield from _condition(row.when, (*at, "branch", place, "when"))
        case Outcome():
            yield from _lines(step.owed, (*at, "owed"))
        case _:
            pass
    yield from _names(Of.SOURCE, step.sources, (*at, "sources"))


def _of_question(step: Question, at: Pointer) -> Iterator[Reference]:
    if step.ask:
        yield Reference(Of.FINDING, step.ask, (*at, "ask"))
    for answer in step.answers:
        here: Pointer = (*at, "answers", answer.id)
        if answer.means == (answer.id,):
            yield Reference(Of.FINDING, answer.id, here, value_of=step.ask)
        else:
            yield from _values(step.ask, answer.means, (*here, "means"), named=False)


def _of_action(step: Action, at: Pointer) -> Iterator[Reference]:
    yield from _lines(step.lines, (*at, "do"))
    yield from _names(Of.KIT, step.needs, (*at, "needs"))
    yield from _names(Of.CHOICE, step.choices, (*at, "choices"))
    yield from _effects(step.effects, at)


def _lines(lines: Iterable[Line], at: Pointer) -> Iterator[Reference]:
    for place, line in enumerate(lines):
        if line.who:
            yield Reference(Of.DUTY, line.who, (*at, place, "who"))
        if line.act:
            yield Reference(Of.ACT, line.act, (*at, place, "act"))
        yield from _names(Of.SOURCE, line.sources, (*at, place, "sources"))


def _effects(effects: Effects, at: Pointer) -> Iterator[Reference]:
    for finding, values in effects.known:
        yield from _values(finding, values, (*at, "makes known", finding))
    yield from _names(Of.FINDING, effects.stale, (*at, "makes stale"))


def _condition(condition: Condition, at: Pointer) -> Iterator[Reference]:
    for finding, values in condition.terms:
        yield from _values(finding, values, (*at, finding))


def _values(
    finding: str, values: Iterable[str], at: Pointer, *, named: bool = True
) -> Iterator[Reference]:
    if named:
        yield Reference(Of.FINDING, finding, at)
    for place, value in enumerate(values):
        yield Reference(Of.FINDING, value, (*at, place), value_of=finding)


def _names(of: Of, names: Iterable[str], at: Pointer) -> Iterator[Reference]:
    for place, name in enumerate(names):
        yield Reference(of, name, (*at, place))
