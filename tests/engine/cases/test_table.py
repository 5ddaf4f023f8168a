"""The table of cases: every combination once, and fewer rows that say the same."""

from __future__ import annotations

from itertools import product

import pytest
from chamberwise.engine.cases.case import Case, Combination
from chamberwise.engine.cases.grouping import grouped
from chamberwise.engine.cases.table import cases, whole_cases
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import CaseTable, Impossible
from chamberwise.engine.model.step import Step
from hypothesis import given
from hypothesis import strategies as st

from tests.engine.cases.tables import ENTRY, tables
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
        case.combination: (case.outcome, dict(case.plan), case.problem, case.not_asked)
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
    assert found[combination] == (done, {"wound": ("Press",)}, "", ())


def test_without_an_answer_for_later_it_leaks_until_the_bound_is_reached() -> None:
    found = results(cases(one(CaseTable(("wound", "depth"))), "one"))
    combination = (("wound", "leaking"), ("depth", "flat"))
    planned = {"wound": ("Press", "Suture"), "chamber": ("Fill",)}
    assert found[combination] == (Place("one", "done"), planned, "", ())


def test_what_the_table_does_not_answer_is_said() -> None:
    (dry, leaking) = cases(one(CaseTable(("wound",))), "one")
    assert "add it to `assume`" in dry.problem
    assert dry.outcome is None
    assert leaking.outcome is None


def test_assumptions_passed_in_stand_before_the_tables_own() -> None:
    table = CaseTable(("wound",), assume=(("depth", "deep"),))
    assert cases(one(table), "one")[0].plan == {}
    assert cases(one(table), "one", {"depth": "flat"})[0].plan == {"chamber": ("Fill",)}


def test_a_finding_that_the_walk_does_not_need_is_named() -> None:
    short = library(
        pathway(
            "one",
            ask("look", "wound", dry="done", leaking="deep"),
            ask("deep", "depth", flat="done", low="done", deep="done"),
            end("done"),
            cases=CaseTable(("wound", "depth")),
        ),
        findings=FINDINGS,
    )
    not_asked = [case.not_asked for case in cases(short, "one")]
    assert not_asked == [("depth",)] * 3 + [()] * 3


def known_unasked(*declared: Impossible) -> Library:
    return library(
        pathway(
            "one",
            do("tie", "look", known={"wound": "dry"}),
            ask("look", "wound", dry="done", leaking="done"),
            end("done"),
            cases=CaseTable(("wound",), impossible=declared),
        ),
        findings=FINDINGS,
    )


def test_a_finding_known_otherwise_before_it_is_asked_is_a_problem() -> None:
    dry, leaking = cases(known_unasked(), "one")
    assert dry.problem == ""
    assert "`look` goes by a `wound` that cannot be `leaking`, unasked" in leaking.problem
    unclear = cases(known_unasked(), "one", cannot_tell=True)[-1]
    assert (unclear.problem, unclear.not_asked) == ("", ("wound",))


def test_a_finding_known_otherwise_is_none_where_it_is_declared_impossible() -> None:
    declared = Impossible(Condition((("wound", ("leaking",)),)), "It is tied.")
    _, leaking = cases(known_unasked(declared), "one")
    assert (leaking.problem, leaking.improbable) == ("", True)
    assert leaking.doubts[0].stands_at is None


def test_a_value_ruled_out_by_now_is_answered_as_when_asked_again() -> None:
    """A lens was in the bag at first; once placed anew it can only be in the sulcus or captured."""
    table = CaseTable(("lens",), asked_again=(("lens", "captured"),))
    placed = library(
        pathway(
            "one",
            ask("look", "lens", bag="place", sulcus="done", captured="done"),
            do("place", "again", known={"lens": "sulcus captured"}),
            ask("again", "lens", sulcus="done", captured="held", bag="done"),
            end("done"),
            end("held"),
            cases=table,
        ),
        findings=[finding("lens", "bag sulcus captured")],
    )
    assert [case.outcome for case in cases(placed, "one")] == [
        Place("one", "held"),
        Place("one", "done"),
        Place("one", "done"),
    ]


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


@given(tables(), st.booleans())
def test_grouped_says_the_same_as_the_whole_table(drawn: Library, cannot_tell: bool) -> None:
    whole = whole_cases(drawn, ENTRY, cannot_tell=cannot_tell)
    short = grouped(whole)
    assert len(short) <= len(whole)
    for case in whole:
        rows = [each for each in short if each.holds(case)]
        assert len(rows) == 1
        assert said(rows[0].case) == said(case)
        assert {hang.taken for hang in case.hangs_on} <= set(rows[0].hangs_on)


def said(case: Case) -> object:
    return case.plan, case.outcome, case.problem, [each.because for each in case.doubts]


def test_grouped_of_nothing_is_nothing() -> None:
    assert grouped(()) == ()
