"""Intervals, against the library's own and against those published for its parameters."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from chamberwise.engine.drill.measures.measured import measure
from chamberwise.engine.drill.spacing.due import due
from chamberwise.engine.drill.spacing.grading import Grade, grades
from chamberwise.engine.drill.spacing.scheduling import Memory, after, recall
from chamberwise.engine.model.drill import CriticalAct
from fsrs import Card, Rating, Scheduler
from hypothesis import given
from hypothesis import strategies as st

from tests.engine.drill.measures.test_measures import measured, run, small

NOW = datetime(2026, 1, 5, tzinfo=UTC)


def intervals(grades_given: list[Grade]) -> list[int]:
    memory, now, found = None, NOW, []
    for grade in grades_given:
        memory = after(memory, "stop", "nucleus", grade, now)
        found.append((memory.due - now).days)
        now = memory.due
    return found


@pytest.mark.parametrize(
    ("said", "days"),
    [
        ([Grade.GOOD] * 6, [1, 3, 8, 19, 43, 89]),
        ([Grade.HARD] * 6, [1, 1, 2, 3, 3, 4]),
        ([Grade.GOOD] * 3 + [Grade.AGAIN] + [Grade.GOOD] * 3, [1, 3, 8, 1, 2, 3, 5]),
    ],
)
def test_the_intervals_worked_out_for_a_retention_of_ninety_five(
    said: list[Grade], days: list[int]
) -> None:
    """Computed with the library's published default parameters."""
    assert intervals(said) == days


@given(st.lists(st.tuples(st.sampled_from(Grade), st.integers(0, 120)), min_size=1, max_size=12))
def test_every_history_goes_as_the_library_has_it(history: list[tuple[Grade, int]]) -> None:
    scheduler = Scheduler(
        desired_retention=0.95,
        learning_steps=(),
        relearning_steps=(),
        maximum_interval=90,
        enable_fuzzing=False,
    )
    card, memory, now = Card(card_id=1), None, NOW
    for grade, days in history:
        now += timedelta(days=days)
        card, _ = scheduler.review_card(card, Rating(grade.value), now)
        memory = after(memory, "stop", "", grade, now)
        assert (memory.due, memory.stability, memory.difficulty) == (
            card.due,
            card.stability,
            card.difficulty,
        )
        assert recall(memory, now + timedelta(days=9)) == pytest.approx(
            scheduler.get_card_retrievability(card, now + timedelta(days=9))
        )


def test_no_interval_is_longer_than_ninety_days() -> None:
    assert max(intervals([Grade.EASY] * 12)) == 90


CRITICAL = CriticalAct("fill", soft=20, hard=40)


def grade_of(script: str) -> Grade:
    return dict(grades(measured(script, CRITICAL)))["fill"]


def test_grades_come_from_what_was_done() -> None:
    assert grade_of("5 stop") is Grade.AGAIN
    assert grade_of("5 stop, 15 fill") is Grade.GOOD
    assert grade_of("5 stop, 25 fill") is Grade.HARD
    assert grade_of("5 stop, 15 fill nudged") is Grade.HARD
    assert grade_of("5 stop, 15 fill told") is Grade.AGAIN
    assert grade_of("5 stop, 10 fill sure") is Grade.EASY
    assert grade_of("5 stop, 11 fill sure") is Grade.GOOD


def test_harm_a_hard_pair_and_a_sure_error_bring_an_act_back_tomorrow() -> None:
    critical = (CriticalAct("withdraw", soft=20),)
    harmed = measure(small(), run("3 stop, 5 withdraw", critical=critical))
    assert dict(grades(harmed)) == {"withdraw": Grade.AGAIN}
    paired = run("5 fill, 6 withdraw", critical=critical, orders="stop < withdraw")
    assert dict(grades(measure(small(), paired))) == {"withdraw": Grade.AGAIN}
    memory = after(None, "withdraw", "nucleus", Grade.AGAIN, NOW)
    assert memory.due - NOW == timedelta(days=1)


def memory(act: str, days_ago: int, due_in: int) -> Memory:
    return Memory(act, "", 5.0, 5.0, NOW + timedelta(days=due_in), NOW - timedelta(days=days_ago))


def test_never_a_pile_only_the_three_most_perishable() -> None:
    found = due([memory(f"act-{days}", days, -1) for days in (3, 9, 4, 12, 6)], NOW)
    assert [each.act for each in found.now] == ["act-12", "act-9", "act-6"]
    assert found.more == 2


def test_an_act_due_in_several_contexts_is_shown_in_the_most_perishable() -> None:
    both = [replace(memory("one", days, -1), context=f"stage-{days}") for days in (3, 9)]
    found = due([*both, memory("other", 1, -1)], NOW)
    assert [(each.act, each.context) for each in found.now] == [("one", "stage-9"), ("other", "")]
    assert found.more == 1


def test_what_is_not_due_yet_says_when() -> None:
    found = due([memory("one", 1, 4), memory("other", 1, 9)], NOW)
    assert (found.now, found.more, found.next_on) == ((), 0, NOW + timedelta(days=4))
    assert not found.warm_up
    assert due([], NOW).next_on is None


def test_after_eight_weeks_a_warm_up_is_offered() -> None:
    assert due([memory("one", 56, -1)], NOW).warm_up
    assert not due([memory("one", 55, -1)], NOW).warm_up
