"""Definitions and rules with everything in them called as it is called now."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.comparing.names.named import Calls, Sort
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.rule import AnyOf, Happening, Rule
from chamberwise.engine.model.words import Act, Choice, Effects, Finding, Value, Words


def words_called(words: Words, calls: Calls) -> Words:
    """Return definitions under the names of now."""
    kit = (
        replace(each, id=calls.now(Sort.KIT, each.id), sources=_sources(each.sources, calls))
        for each in words.kit.values()
    )
    duties = (replace(each, id=calls.now(Sort.DUTY, each.id)) for each in words.duties.values())
    sources = (replace(each, id=calls.now(Sort.SOURCE, each.id)) for each in words.sources.values())
    return Words(
        {each.id: each for each in (_finding(each, calls) for each in words.findings.values())},
        {each.id: each for each in (_act(each, calls) for each in words.acts.values())},
        {each.id: each for each in duties},
        {each.id: each for each in kit},
        {each.id: each for each in sources},
        {each.id: each for each in (_rule(each, calls) for each in words.rules.values())},
    )


def effects_called(effects: Effects, calls: Calls) -> Effects:
    """Return effects that name findings and values as they are called now."""
    known = tuple(
        (calls.now(Sort.FINDING, name), calls.each(Sort.VALUE, values, name))
        for name, values in effects.known
    )
    return Effects(known, calls.each(Sort.FINDING, effects.stale))


def condition_called(condition: Condition, calls: Calls) -> Condition:
    """Return a condition that names findings and values as they are called now."""
    return replace(
        condition,
        terms=tuple(
            (calls.now(Sort.FINDING, name), calls.each(Sort.VALUE, tuple(values), name))
            for name, values in condition.terms
        ),
    )


def _sources(names: tuple[str, ...], calls: Calls) -> tuple[str, ...]:
    return calls.each(Sort.SOURCE, names)


def _act(act: Act, calls: Calls) -> Act:
    return replace(
        act,
        id=calls.now(Sort.ACT, act.id),
        effects=effects_called(act.effects, calls),
        sources=_sources(act.sources, calls),
    )


def _finding(finding: Finding, calls: Calls) -> Finding:
    return replace(
        finding,
        id=calls.now(Sort.FINDING, finding.id),
        values=tuple(_value(each, finding.id, calls) for each in finding.values),
        sources=_sources(finding.sources, calls),
        choice=finding.choice and _choice(finding.choice, finding.id, calls),
    )


def _value(value: Value, of: str, calls: Calls) -> Value:
    name = calls.now(Sort.VALUE, value.id, of)
    return replace(value, id=name, sources=_sources(value.sources, calls))


def _choice(choice: Choice, of: str, calls: Calls) -> Choice:
    def now(name: str | None) -> str | None:
        return name and calls.now(Sort.VALUE, name, of)

    return replace(choice, suggested=now(choice.suggested), chosen=now(choice.chosen))


def _rule(rule: Rule, calls: Calls) -> Rule:
    scope = rule.scope
    return replace(
        rule,
        id=calls.now(Sort.RULE, rule.id),
        of=_any_of(rule.of, calls),
        by=_any_of(rule.by, calls),
        scope=replace(
            scope, opens=_any_of(scope.opens, calls), closes=_any_of(scope.closes, calls)
        ),
        sources=_sources(rule.sources, calls),
    )


def _any_of(several: AnyOf, calls: Calls) -> AnyOf:
    return tuple(_happening(each, calls) for each in several)


def _happening(happening: Happening, calls: Calls) -> Happening:
    return Happening(
        acts=calls.each(Sort.ACT, happening.acts),
        by=calls.each(Sort.DUTY, happening.by),
        warns_of=calls.each(Sort.ACT, happening.warns_of),
        asks=calls.each(Sort.FINDING, happening.asks),
        outcomes=tuple(calls.outcomes.get(each, each) for each in happening.outcomes),
        hands_over_to=happening.hands_over_to,
        surely=condition_called(happening.surely, calls),
        possibly=condition_called(happening.possibly, calls),
        unless_surely=condition_called(happening.unless_surely, calls),
        unless_possibly=condition_called(happening.unless_possibly, calls),
        known=calls.each(Sort.FINDING, happening.known),
        unless_known=calls.each(Sort.FINDING, happening.unless_known),
        stale=calls.each(Sort.FINDING, happening.stale),
        unknown=calls.each(Sort.FINDING, happening.unknown),
    )
