"""Nine rules over twelve steps, whose verdicts and shortest walks eight other tools agree on.

SPIN, z3 (spacer, datalog and bounded checking), automata-lib, clingo, pyModelChecking and Storm
gave these. A walk of n positions there is one of n moves here, or of n - 1 moves and the outcome.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from chamberwise.engine.meaning.advance import advance, begin
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Extent, Pattern, Rule, Scope
from chamberwise.engine.model.step import Question, Step
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Holds, Proof, Violated

from tests.support.build import ask, changed, do, end, finding, library, pathway
from tests.support.rules import at, rule

VITRECTOMY = at(act="anterior-vitrectomy")
SULCUS = at(act="sulcus-iol")
LOOKED = at(asks="vitreous", surely={"vitreous": "absent"})
LOOKED_AT_NUCLEUS = at(asks="nucleus", surely={"vitreous": "absent"})
STAIN = at(act="stain-triamcinolone")
MAYBE = {"vitreous": "present"}
EACH_VITRECTOMY = Scope(Extent.AFTER_UNTIL, VITRECTOMY)

RULES = {
    "R1": rule(Pattern.ABSENCE, at(act="remove-fragments", possibly=MAYBE)),
    "R2": rule(Pattern.PRECEDENCE, SULCUS, STAIN),
    "R3": rule(Pattern.PRECEDENCE, SULCUS, LOOKED),
    "R3, since each": rule(Pattern.PRECEDENCE, SULCUS, LOOKED, scope=EACH_VITRECTOMY),
    "R4": rule(Pattern.RESPONSE, VITRECTOMY, SULCUS),
    "R5": rule(Pattern.CHAIN_RESPONSE, VITRECTOMY, STAIN),
    "R6": rule(Pattern.BOUNDED_EXISTENCE, VITRECTOMY, times=1),
    "R7": rule(Pattern.NOT_CO_EXISTENCE, at(act="refer-vr"), SULCUS),
    "R8": rule(
        Pattern.ABSENCE,
        at(act="remove-fragments"),
        scope=Scope(Extent.AFTER, at(act="refer-vr")),
    ),
    "R9": rule(Pattern.ABSENCE, at(act="sulcus-iol", possibly=MAYBE)),
}

BROKEN = {
    "R2": ["s1", "s2", "s5", "s8", "s9"],
    "R4": ["s1", "s2", "s3", "s4", "s2", "s5", "s11", "s12"],
    "R6": ["s1", "s2", "s3", "s4", "s2", "s3"],
}
"""The positions of the shortest walk; every rule not named here holds."""


def example(after_extraction: str = "s2") -> Library:
    steps = (
        do("s1", "s2", acts="inject-ovd"),
        ask("s2", "vitreous", present="s3", absent="s5"),
        do("s3", "s4", acts="anterior-vitrectomy", stale="vitreous"),
        do("s4", "s2", acts="stain-triamcinolone"),
        ask("s5", "nucleus", none="s8", fragments="s6", bulk="s7", dropped="s11"),
        do("s6", "s2", acts="remove-fragments", stale="nucleus vitreous"),
        do(
            "s7",
            after_extraction,
            acts="manual-extraction",
            known={"nucleus": "none"},
            stale="vitreous",
        ),
        ask("s8", "support", adequate="s9", inadequate="s10"),
        do("s9", "s12", acts="sulcus-iol"),
        do("s10", "s12", acts="leave-aphakic"),
        do("s11", "s12", acts="refer-vr"),
        end("s12"),
    )
    findings = [
        finding("vitreous", "absent present"),
        finding("nucleus", "none fragments bulk dropped"),
        finding("support", "adequate inadequate"),
    ]
    return library(pathway("example", *map(_certain, steps)), findings=findings)


def _certain(step: Step) -> Step:
    if not isinstance(step, Question):
        return step
    return changed(step, answers=tuple(each for each in step.answers if each.means))


def proof_of(whole: Library) -> Proof:
    return prove(whole, "example", named())


def named() -> list[Rule]:
    return [replace(each, id=name) for name, each in RULES.items()]


def positions(whole: Library, verdict: Violated) -> list[str]:
    """Return the steps of a counterexample, and the outcome where it broke at the end."""
    state = begin(whole, "example").state
    found = []
    for move in verdict.counterexample.moves:
        found.append(state.place.step)
        state = advance(whole, state, move)
    return found if verdict.counterexample.moment is not None else [*found, state.place.step]


@pytest.mark.parametrize("name", RULES)
def test_verdict_and_shortest_walk_are_those_of_the_other_tools(name: str) -> None:
    whole = example()
    verdict = dict(zip(RULES, proof_of(whole).verdicts, strict=True))[name]
    if name in BROKEN:
        assert isinstance(verdict, Violated)
        assert positions(whole, verdict) == BROKEN[name]
    else:
        assert verdict == Holds(replace(RULES[name], id=name), is_vacuous=False)


def test_a_question_passed_over_is_no_moment() -> None:
    """The others let R3 look at the nucleus; here that question is silent once it is known."""
    literal = rule(Pattern.PRECEDENCE, SULCUS, LOOKED_AT_NUCLEUS, scope=EACH_VITRECTOMY)
    whole = example()
    verdict = prove(whole, "example", [literal]).verdicts[0]
    assert isinstance(verdict, Violated)
    way = positions(whole, verdict)
    assert way == ["s1", "s2", "s5", "s7", "s2", "s3", "s4", "s2", "s8", "s9"]


def test_the_rule_alone_is_judged_as_among_others() -> None:
    whole = example()
    together = proof_of(whole).verdicts
    alone = [prove(whole, "example", [each]).verdicts[0] for each in named()]
    assert list(together) == alone


def test_a_shortcut_past_the_second_look_is_caught_by_one_rule_alone() -> None:
    """After the manual extraction nobody looks again, so vitreous may still be there."""
    broken = {
        each.rule.id
        for each in proof_of(example(after_extraction="s5")).verdicts
        if isinstance(each, Violated)
    }
    assert broken == {*BROKEN, "R9"}


def test_rules_of_one_name_are_told_apart() -> None:
    whole = example()
    nameless = [replace(each, id="one-name") for each in named()]
    verdicts = prove(whole, "example", nameless).verdicts
    assert [type(each) for each in verdicts] == [type(each) for each in proof_of(whole).verdicts]
