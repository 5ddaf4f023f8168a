"""What kills a mutant: the check or rule that ought to, and nothing where nothing can."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.mutants.hunting import hunted
from chamberwise.engine.mutants.killing import Bench, bench_for, broken_already, killed_by
from chamberwise.engine.mutants.nearing import edited_places
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.verdict import Violated

from tests.mutants.leaking import NAME, leaking, mutant


@cache
def bench() -> Bench:
    return bench_for(leaking(), NAME, broken_already(leaking().library, NAME))


def test_the_original_is_clean() -> None:
    assert check_files(leaking(), list(leaking().files), date(2026, 11, 25)) == []
    assert (bench().found, bench().broken) == (frozenset(), frozenset())


@pytest.mark.parametrize(
    ("name", "killer"),
    [
        ("drop-step/get-help", "late-call-for-help"),
        ("drop-step/hydrate", "loop-without-bound"),
        ("cannot-tell/test-wound/left out", "answers-do-not-cover"),
        ("cannot-tell/test-wound/as dry", "dry-before-the-end"),
        ("drop-step/suture", "dry-before-the-end"),
        ("drop-effect/act suture-main-wound/makes known wound", "dry-before-the-end"),
        ("retarget/get-help/go to -> suture", "unreachable-step"),
        ("retarget/test-wound/leaking -> finished", "unreachable-step"),
        ("move-value/test-wound/leaking -> dry", "unreachable-step"),
        ("loosen-bound/hydrate/none", "loop-without-bound"),
        ("drop-effect/act hydrate-wound/makes stale wound", "never-comes-up"),
    ],
)
def test_it_is_killed_by_what_ought_to(name: str, killer: str) -> None:
    assert killed_by(bench(), mutant(name)) == killer


@pytest.mark.parametrize(
    "name",
    [
        "loosen-bound/hydrate/1 more",
        "drop-act/finished/tell-patient",
        "drop-line/finished/tell-patient",
    ],
)
def test_what_no_check_and_no_rule_speaks_of_survives(name: str) -> None:
    assert killed_by(bench(), mutant(name)) is None


def test_what_is_wrong_with_the_original_kills_nothing() -> None:
    """A rule broken already, and a problem found already, tell a mutant from nothing."""
    faulty = mutant("cannot-tell/test-wound/as dry").within(leaking().library)
    broken = broken_already(faulty, NAME)
    of_faulty = bench_for(replace(leaking(), library=faulty), NAME, broken)
    assert of_faulty.broken == {(NAME, "dry-before-the-end")}
    dropped = next(each for each in mutants(faulty, NAME) if each.id == "drop-step/suture")
    assert killed_by(of_faulty, dropped) is None


def test_what_is_hunted_down_is_proved_broken() -> None:
    original, caught = leaking().library, 0
    for each in mutants(original, NAME):
        library = each.within(original)
        rules = rules_for(library, NAME)
        rule = hunted(library, NAME, rules, edited_places(original, library), each.id, 500)
        verdicts = prove(library, NAME).verdicts
        broken = [verdict.rule for verdict in verdicts if isinstance(verdict, Violated)]
        assert rule is None or rule in broken, each.id
        caught += rule is not None
    assert caught


def test_an_edit_is_found_where_it_was_made() -> None:
    original = leaking().library
    dropped = mutant("drop-step/get-help").within(original)
    assert [place.step for place in edited_places(original, dropped)] == ["test-wound"]
    act = mutant("drop-effect/act hydrate-wound/makes stale wound").within(original)
    assert [place.step for place in edited_places(original, act)] == ["hydrate"]
    arrow = mutant("cannot-tell/test-wound/as dry").within(original)
    assert [place.step for place in edited_places(original, arrow)] == ["test-wound"]
