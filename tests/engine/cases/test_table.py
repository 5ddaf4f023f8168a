"""The table of cases: every combination once, and fewer rows that say the same."""

from __future__ import annotations

from itertools import product

import pytest
from chamberwise.engine.cases.case import Case, Combination
from chamberwise.engine.cases.grouping import grouped
from chamberwise.engine.cases.table import cases
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import CaseTable, Impossible
from chamberwise.engine.model.step import Step
from hypothesis import given
from hypothesis import strategies as st

from tests.support.build import (
    ask,
    bounded,
    branch,
    changed,
    do,
    end,
    finding,
    hand_over,
    library,
    pathway,
    row,
)
from tests.support.strategies import libraries

FINDINGS = [finding("wound", "dry leaking"), finding("depth", "flat low deep")]


def plan(step: Step, **said: str) -> Step:
    return changed(step, plan=tuple(said.items()))


def one(table: CaseTable) -> Library:
    return library(
        pathway(
            "one",
            ask("look", "wound", dry="deep", leaking="press"),
            bounded(plan(do("press", "look", stale="wound"), wound="Press"), 2, "over"),
            ask("deep", "depth", flat="fill", low="fill", deep="done"),
            plan(do("fill", "done"), chamber="Fill"),
            hand_over("over", "two", stitched="deep"),
            end("done"),
            cases=table,
        ),
        pathway("two", plan(do("stitch", "stitched"), wound="Suture"), end("stitched")),
        findings=FINDINGS,
    )


BOTH = CaseTable(("wound", "depth"), asked_again=(("wound", "dry"),))


def results(found: tuple[Case, ...]) -> dict[Combination, object]:
    return {
        case.combination: (case.outcome, dict(case.plan), case.problem, case.looked_again)
        for case in found
    }


def test_every_combination_stands_once_in_document_order() -> None:
    found = cases(one(BOTH), "one")
    expected = product(["dry", "leaking"], ["flat", "low", "deep"])
    assert [tuple(value for _, value in case.combination) for case in found] == list(expected)


def test_with_cannot_tell_every_finding_has_one_value_more() -> None:
    found = cases(one(BOTH), "one", cannot_tell=True)
    assert len(found) == 3 * 4
    assert len({case.combination for case in found}) == 12


def test_a_case_answers_again_as_the_table_says() -> None:
    found = results(cases(one(BOTH), "one"))
    done = Place("one", "done")
    combination = (("wound", "leaking"), ("depth", "deep"))
    assert found[combination] == (done, {"wound": ("Press",)}, "", False)


def test_without_an_answer_for_later_it_leaks_until_the_bound_is_reached() -> None:
    found = results(cases(one(CaseTable(("wound", "depth"))), "one"))
    combination = (("wound", "leaking"), ("depth", "flat"))
    planned = {"wound": ("Press", "Suture"), "chamber": ("Fill",)}
    assert found[combination] == (Place("one", "done"), planned, "", False)


def test_what_the_table_does_not_answer_is_said() -> None:
    (dry, leaking) = cases(one(CaseTable(("wound",))), "one")
    assert "add it to `assume`" in dry.problem
    assert dry.outcome is None
    assert leaking.outcome is None


def test_assumptions_passed_in_stand_before_the_tables_own() -> None:
    table = CaseTable(("wound",), assume=(("depth", "deep"),))
    assert cases(one(table), "one")[0].plan == {}
    assert cases(one(table), "one", {"depth": "flat"})[0].plan == {"chamber": ("Fill",)}


def test_an_impossible_combination_must_be_looked_at_again() -> None:
    impossible = Impossible(Condition((("wound", ("leaking",)), ("depth", ("deep",)))), "It is.")
    table = CaseTable(BOTH.over, (), BOTH.asked_again, (impossible,))
    marked = [case for case in cases(one(table), "one") if case.improbable]
    assert [case.combination for case in marked] == [(("wound", "leaking"), ("depth", "deep"))]
    assert marked[0].looked_again


def test_a_branch_that_cannot_decide_is_a_problem_of_the_case() -> None:
    table = CaseTable(("wound",))
    stuck = library(
        pathway(
            "one",
            ask("look", "wound", dry="which", leaking="done"),
            branch("which", row("done", depth="deep")),
            end("done"),
            cases=table,
        ),
        findings=FINDINGS,
    )
    dry, leaking = cases(stuck, "one")
    assert dry.problem == "`which` cannot decide"
    assert leaking.outcome == Place("one", "done")


def test_a_pathway_without_a_table_is_refused() -> None:
    with pytest.raises(ValueError, match="has no `cases:`"):
        cases(one(BOTH), "two")


@given(libraries(), st.booleans())
def test_grouped_says_the_same_as_the_whole_table(drawn: Library, cannot_tell: bool) -> None:
    table = CaseTable(
        ("a", "b"), assume=(("c", "c1"), ("d", "d1")), asked_again=(("a", "a1"), ("b", "b2"))
    )
    first = drawn.pathways["p0"]
    steps = [
        changed(step, plan=(("column", step.id),)) if number % 3 == 0 else step
        for number, step in enumerate(first.steps.values())
    ]
    planned = pathway("p0", *steps, findings=first.words.findings.values(), cases=table)
    others = [each for each in drawn.pathways.values() if each.id != "p0"]
    whole = cases(
        library(
            planned,
            *others,
            findings=drawn.shared.findings.values(),
            acts=drawn.shared.acts.values(),
        ),
        "p0",
        cannot_tell=cannot_tell,
    )
    short = grouped(whole)
    assert len(short) <= len(whole)
    for case in whole:
        rows = [each.case for each in short if each.holds(case)]
        assert len(rows) == 1
        said = (rows[0].plan, rows[0].outcome, rows[0].improbable, rows[0].problem)
        assert said == (case.plan, case.outcome, case.improbable, case.problem)


def test_grouped_of_nothing_is_nothing() -> None:
    assert grouped(()) == ()
