"""A pathway, or a set of words, with every text that people read said anew.

Only texts change: names, arrows, effects and rules stay as they are, so that nothing told of the
one can be false of the other. Citations are left as their authors wrote them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, TypeAlias, TypeVar

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.pathway import CaseTable, Pathway, WallChart
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import Action, Handover, Line, Outcome, Question, Step
from chamberwise.engine.model.words import Act, Duty, Finding, KitItem, Value, Words

Say: TypeAlias = Callable[[Pointer, str], str]
"""Says the text at a place; it is never asked of an empty one."""

_T = TypeVar("_T")


def retold_pathway(pathway: Pathway, say: Say) -> Pathway:
    """Return a pathway with its texts said anew, in document order."""
    tell = unless_empty(say)
    return replace(
        pathway,
        title=tell(("title",), pathway.title),
        summary=tell(("summary",), pathway.summary),
        phases={name: tell(("phases", name), said) for name, said in pathway.phases.items()},
        wall_chart=_chart(pathway.wall_chart, tell),
        words=retold_words(pathway.words, say),
        cases=_cases(pathway.cases, tell),
        steps={name: _step(step, tell) for name, step in pathway.steps.items()},
    )


def retold_words(words: Words, say: Say) -> Words:
    """Return words with their texts said anew, in the order of `engine.checks.texts`."""
    tell = unless_empty(say)
    return Words(
        _each(words.findings, _finding, tell),
        _each(words.acts, _act, tell),
        _each(words.duties, _duty, tell),
        _each(words.kit, _kit, tell),
        words.sources,
        _each(words.rules, _rule, tell),
    )


def unless_empty(say: Say) -> Say:
    """Return what says texts and leaves empty ones empty."""
    return lambda at, text: say(at, text) if text else text


def _each(table: Mapping[str, _T], retold: Callable[[_T, Say], _T], tell: Say) -> dict[str, _T]:
    return {name: retold(each, tell) for name, each in table.items()}


def _finding(finding: Finding, tell: Say) -> Finding:
    choice = finding.choice
    table, values, says = ("findings", "values", "sign")
    if choice:
        table, values, says = ("choices", "positions", "says")
    at: Pointer = (table, finding.id)

    def value(each: Value) -> Value:
        here: Pointer = (*at, values, each.id)
        label = tell((*here, "label"), each.label)
        return replace(each, label=label, sign=tell((*here, says), each.sign))

    return replace(
        finding,
        title=tell((*at, "title"), finding.title),
        values=tuple(value(each) for each in finding.values),
        choice=choice and replace(choice, because=tell((*at, "because"), choice.because)),
    )


def _act(act: Act, tell: Say) -> Act:
    return replace(act, title=tell(("acts", act.id, "title"), act.title))


def _duty(duty: Duty, tell: Say) -> Duty:
    return replace(duty, title=tell(("duties", duty.id, "title"), duty.title))


def _kit(item: KitItem, tell: Say) -> KitItem:
    return replace(item, **_said(item, ("kit", item.id), tell, "title", "amount", "why"))


def _rule(rule: Rule, tell: Say) -> Rule:
    return replace(rule, **_said(rule, ("rules", rule.id), tell, "title", "harm", "instead"))


def _said(of: Any, at: Pointer, tell: Say, *names: str) -> dict[str, Any]:
    """Return texts said anew whose keys in the file are the names of their fields."""
    return {name: tell((*at, name), getattr(of, name)) for name in names}


def _chart(chart: WallChart | None, tell: Say) -> WallChart | None:
    return chart and replace(chart, use_when=tell(("wall chart", "use when"), chart.use_when))


def _cases(table: CaseTable | None, tell: Say) -> CaseTable | None:
    if table is None:
        return None
    impossible = [
        replace(each, because=tell(("cases", "impossible", number, "because"), each.because))
        for number, each in enumerate(table.impossible)
    ]
    return replace(table, impossible=tuple(impossible))


def _step(step: Step, tell: Say) -> Step:
    at: Pointer = ("steps", step.id)
    cautions = []
    for number, each in enumerate(step.cautions):
        here: Pointer = (*at, "cautions", number)
        harm = tell((*here, str(each.signal)), each.harm)
        cautions.append(replace(each, harm=harm, instead=tell((*here, "instead"), each.instead)))
    own = _own_texts(step, at, tell)
    return replace(
        step,
        **own,
        cautions=tuple(cautions),
        plan=tuple((column, tell((*at, "plan", column), said)) for column, said in step.plan),
        **_said(step, at, tell, "why", "short"),
    )


def _own_texts(step: Step, at: Pointer, tell: Say) -> dict[str, Any]:
    match step:
        case Question():
            question = tell((*at, "question"), step.question)
            answers = [
                replace(each, label=tell((*at, "answers", each.id, "label"), each.label))
                for each in step.answers
            ]
            return {"question": question, "answers": tuple(answers)}
        case Action():
            return {"lines": _lines(step.lines, (*at, "do"), tell)}
        case Handover():
            return {"says": tell((*at, "says"), step.says)}
        case Outcome():
            title = tell((*at, "outcome"), step.title)
            return {"title": title, "owed": _lines(step.owed, (*at, "owed"), tell)}
        case _:
            return {}


def _lines(lines: tuple[Line, ...], at: Pointer, tell: Say) -> tuple[Line, ...]:
    told = []
    for number, line in enumerate(lines):
        key = "says" if line.said_aloud else "does"
        text = tell((*at, number, key), line.text)
        told.append(replace(line, text=text, when=tell((*at, number, "when"), line.when)))
    return tuple(told)
