"""Tiny pathways in a line a step, over the model itself.

    one = library(
        pathway(
            "one",
            ask("look", "vitreous", none="close", present="cut"),
            do("cut", "look", stale="vitreous"),
            end("close"),
        ),
        findings=[finding("vitreous", "none present")],
    )

Names of values stand in one text with spaces between; a question can always be answered "cannot
tell", which leads where `unclear` says or else where its last answer leads.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Any, TypeAlias

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable, Pathway, Status
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Bound,
    Branch,
    Caution,
    Handover,
    Line,
    Outcome,
    Question,
    Row,
    SignalWord,
    Step,
)
from chamberwise.engine.model.words import About, Act, Choice, Effects, Finding, Value, Words

from tests.support.told import ToldLibrary

Known: TypeAlias = Mapping[str, str]

TODAY = date(2026, 11, 25)


def library(
    *pathways: Pathway,
    findings: Iterable[Finding] = (),
    acts: Iterable[Act] = (),
    rules: Iterable[Rule] = (),
) -> Library:
    """Return a library over shared findings and acts, under house rules."""
    return ToldLibrary(words(findings, acts, rules), {each.id: each for each in pathways})


def words(
    findings: Iterable[Finding] = (), acts: Iterable[Act] = (), rules: Iterable[Rule] = ()
) -> Words:
    return Words(
        {each.id: each for each in findings},
        {each.id: each for each in acts},
        rules={each.id: each for each in rules},
    )


def pathway(
    name: str,
    *steps: Step,
    findings: Iterable[Finding] = (),
    acts: Iterable[Act] = (),
    rules: Iterable[Rule] = (),
    cases: CaseTable | None = None,
) -> Pathway:
    """Return a pathway that begins at the first of its steps."""
    return Pathway(
        id=name,
        title=name,
        summary="",
        edition="0.1",
        status=Status.DRAFT,
        authors=("Tester",),
        approved_by=None,
        approved_on=None,
        reviewed=TODAY,
        review_by=TODAY,
        start=steps[0].id,
        phases={"only": "Only phase"},
        steps={step.id: step for step in steps},
        words=words(findings, acts, rules),
        cases=cases,
        accepted=(),
    )


def finding(name: str, values: str, *, restless: bool = False) -> Finding:
    return Finding(name, name, About.EYE, _values(values), restless)


def choice(name: str, positions: str, chosen: str | None = None) -> Finding:
    return Finding(
        name, name, About.TEAM, _values(positions), choice=Choice(None, "because", chosen)
    )


def act(name: str, *, known: Known | None = None, stale: str = "", helps: bool = False) -> Act:
    return Act(name, name, effects(known, stale), helps)


def effects(known: Known | None = None, stale: str = "") -> Effects:
    pairs = tuple((name, tuple(values.split())) for name, values in (known or {}).items())
    return Effects(pairs, tuple(stale.split()))


def ask(name: str, about: str, *, unclear: str | None = None, **answers: str) -> Question:
    """Return a question; `a_b="there"` is one answer for the values `a` and `b`."""
    said = [Answer(values, tuple(values.split("_")), target) for values, target in answers.items()]
    said.append(Answer(CANNOT_TELL, (), unclear or said[-1].go_to))
    return Question(id=name, phase="only", ask=about, question=f"{about}?", answers=tuple(said))


def do(
    name: str, go_to: str, *, acts: str = "", known: Known | None = None, stale: str = ""
) -> Action:
    lines = tuple(Line("surgeon", f"Do {each}.", act=each) for each in acts.split())
    return Action(
        id=name,
        phase="only",
        lines=lines or (Line("surgeon", "Hold still."),),
        go_to=go_to,
        effects=effects(known, stale),
    )


def row(go_to: str, **when: str) -> Row:
    return Row(Condition(tuple((name, tuple(said.split())) for name, said in when.items())), go_to)


def branch(
    name: str, *rows: Row, otherwise: str | None = None, not_known: str | None = None
) -> Branch:
    return Branch(id=name, phase="only", rows=rows, otherwise=otherwise, not_known=not_known)


def hand_over(name: str, to: str, **back: str) -> Handover:
    """Return a handover; `done="there"` comes back to `there` after the outcome `done`."""
    return Handover(id=name, phase="only", to=to, says=f"Now {to}.", on_return=tuple(back.items()))


def end(name: str) -> Outcome:
    return Outcome(id=name, phase="only", title=name)


def bounded(step: Step, at_most: int, after_that: str) -> Step:
    return changed(step, bound=Bound(at_most, after_that))


def cautioned(step: Step, guards: str) -> Step:
    caution = Caution(SignalWord.DANGER, "Harm.", "Hold still.", guards)
    return changed(step, cautions=(*step.cautions, caution))


def changed(step: Step, **values: Any) -> Step:
    from dataclasses import replace

    return replace(step, **values)


def _values(names: str) -> tuple[Value, ...]:
    return tuple(Value(name, name) for name in names.split())
