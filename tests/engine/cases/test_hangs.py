"""What cases hang on, against walking each with each thing taken otherwise, one by one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.cases.case import Case, run_case
from chamberwise.engine.cases.granted import granted, open_choices
from chamberwise.engine.cases.hang import Change, Granted, Hang, Otherwise, Taken
from chamberwise.engine.cases.stepping import Stepping
from chamberwise.engine.cases.table import cases, whole_cases
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.engine.model.words import Choice
from hypothesis import given
from hypothesis import strategies as st

from tests.engine.cases.tables import ENTRY, tables
from tests.support.build import (
    ask,
    branch,
    changed,
    choice,
    do,
    end,
    finding,
    library,
    pathway,
    row,
)

Told = dict[tuple[Taken, str, object], tuple[Change, ...]]


@given(tables(), st.booleans())
def test_hangs_are_those_found_by_walking_one_by_one(drawn: Library, cannot_tell: bool) -> None:
    found = whole_cases(drawn, ENTRY, cannot_tell=cannot_tell)
    plain = cases(drawn, ENTRY, cannot_tell=cannot_tell)
    assert tuple(replace(each, hangs_on=()) for each in found) == plain
    for case in found:
        assert told(case.hangs_on) == one_by_one(drawn, case, cannot_tell)


def told(hangs: tuple[Hang, ...]) -> Told:
    return {
        (hang.taken, other.value, other.once): other.changes
        for hang in hangs
        for other in hang.others
    }


def one_by_one(drawn: Library, case: Case, cannot_tell: bool) -> Told:
    """Return what the definition says a case hangs on."""
    if case.outcome is None:
        return {}
    table = table_of(drawn)
    others = granted(drawn, ENTRY, table, cannot_tell=cannot_tell)
    expected: Told = {}
    alone: set[tuple[Taken, str]] = set()
    for taken, value, changed_table in [
        (None, "", table),
        *(
            (taken, value, otherwise(table, taken, value))
            for taken, values in others
            for value in values
        ),
    ]:
        base = run_case(drawn, ENTRY, case.combination, changed_table)
        if taken is not None:
            note(expected, (taken, value, None), changes(base, case))
        for made, position, chosen in choices_made(drawn, table):
            here = run_case(chosen, ENTRY, case.combination, changed_table)
            once = (taken.finding, value) if taken else None
            if (made, position) not in alone and note(
                expected, (made, position, once), changes(here, base)
            ):
                alone |= {(made, position)} if taken is None else set()
    return expected


def note(expected: Told, key: tuple[Taken, str, object], found: tuple[Change, ...]) -> bool:
    if found:
        expected[key] = found
    return bool(found)


def table_of(drawn: Library) -> CaseTable:
    table = drawn.pathways[ENTRY].cases
    assert table
    return table


def otherwise(table: CaseTable, taken: Taken, value: str) -> CaseTable:
    if taken.kind is Granted.ASSUMED:
        pairs = {**dict(table.assume), taken.finding: value}
        return replace(table, assume=tuple(pairs.items()))
    pairs = {**dict(table.asked_again), taken.finding: value}
    return replace(table, asked_again=tuple(pairs.items()))


def choices_made(drawn: Library, table: CaseTable) -> Iterator[tuple[Taken, str, Library]]:
    """Yield every position of every choice with the library of a unit that has made it."""
    for each in open_choices(Stepping(drawn, ENTRY).program, table):
        whole = each.field.finding
        for value in whole.values:
            made = replace(whole, choice=Choice(None, "", value.id))
            shared = {**drawn.shared.findings, whole.id: made}
            yield (
                each.taken,
                value.id,
                library(
                    *drawn.pathways.values(),
                    findings=shared.values(),
                    acts=drawn.shared.acts.values(),
                ),
            )


def changes(case: Case, than: Case) -> tuple[Change, ...]:
    if than.outcome is None or "does not offer" in case.problem:
        return ()
    if case.outcome is None:
        return (Change.OPEN,)
    plan = (Change.PLAN,) if case.plan != than.plan else ()
    return (*plan, *((Change.OUTCOME,) if case.outcome != than.outcome else ()))


def lens(suggested: str | None, chosen: str | None = None) -> Library:
    """A lens by a choice, which comes up only for a trained operator."""
    which = replace(choice("which", "bag none"), choice=Choice(suggested, "because", chosen))
    return library(
        pathway(
            "one",
            ask("look", "support", whole="who", gone="closed"),
            ask("who", "trained", trained="choose", untrained="closed"),
            ask("choose", "which", bag="place", none="closed", unclear="closed"),
            changed(do("place", "closed"), plan=(("lens", "In the bag"),)),
            end("closed"),
            cases=CaseTable(("support",), assume=(("trained", "untrained"),)),
        ),
        findings=[finding("support", "whole gone"), finding("trained", "trained untrained"), which],
    )


def test_a_choice_that_comes_up_only_otherwise_is_named_with_what_has_to_be_otherwise() -> None:
    whole, gone = whole_cases(lens("none"), "one")
    other = Otherwise("bag", (Change.PLAN,), ("trained", "trained"))
    assert whole.hangs_on == (Hang(Taken(Granted.CHOICE, "which", "none"), (other,)),)
    assert gone.hangs_on == ()


def test_a_choice_not_made_is_answered_as_suggested_or_else_not_told() -> None:
    of_whole = [whole_cases(lens(said), "one", {"trained": "trained"})[0] for said in ("bag", None)]
    assert [case.plan for case in of_whole] == [{"lens": ("In the bag",)}, {}]
    assert [case.problem for case in of_whole] == ["", ""]
    assert [
        hang.taken.value
        for case in of_whole
        for hang in case.hangs_on
        if hang.taken.kind is Granted.CHOICE
    ] == ["bag", "cannot tell"]


def test_a_choice_made_by_the_unit_is_nothing_to_hang_on() -> None:
    (whole, _) = whole_cases(lens("none", chosen="bag"), "one", {"trained": "trained"})
    assert whole.plan == {"lens": ("In the bag",)}
    assert [hang.taken.finding for hang in whole.hangs_on] == ["trained"]


def test_an_answer_the_table_lacks_when_something_is_otherwise_is_told_as_open() -> None:
    stuck = library(
        pathway(
            "one",
            ask("look", "support", whole="who", gone="closed"),
            ask("who", "trained", trained="ready", untrained="closed"),
            ask("ready", "kit", there="closed", away="closed"),
            end("closed"),
            cases=CaseTable(("support",), assume=(("trained", "untrained"),)),
        ),
        findings=[
            finding("support", "whole gone"),
            finding("trained", "trained untrained"),
            finding("kit", "there away"),
        ],
    )
    whole, gone = whole_cases(stuck, "one")
    assert whole.hangs_on[0].others == (Otherwise("trained", (Change.OPEN,)),)
    assert (whole.problem, gone.hangs_on) == ("", ())


def test_a_branch_on_a_choice_not_made_is_named() -> None:
    decided = library(
        pathway(
            "one",
            ask("look", "support", whole="which-lens", gone="closed"),
            branch("which-lens", row("place", which="bag"), otherwise="closed", not_known="closed"),
            changed(do("place", "closed"), plan=(("lens", "In the bag"),)),
            end("closed"),
            cases=CaseTable(("support",)),
        ),
        findings=[finding("support", "whole gone"), choice("which", "bag none")],
    )
    whole, _ = whole_cases(decided, "one")
    assert whole.plan == {}
    assert whole.hangs_on == (
        Hang(
            Taken(Granted.CHOICE, "which", "cannot tell"),
            (Otherwise("bag", (Change.PLAN,)),),
        ),
    )
