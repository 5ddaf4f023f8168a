from __future__ import annotations

from datetime import timedelta

from chamberwise.tui.bounce import BounceGuard

from tests.tui.stage import MORNING


def after(milliseconds: int) -> timedelta:
    return timedelta(milliseconds=milliseconds)


def test_the_same_key_at_once_is_a_bounce_and_another_key_is_not() -> None:
    guard = BounceGuard()
    assert guard.lets_pass("1", MORNING)
    assert not guard.lets_pass("1", MORNING + after(100))
    assert guard.lets_pass("enter", MORNING + after(120))
    assert guard.lets_pass("enter", MORNING + after(370))


def test_a_clock_set_back_blocks_nothing() -> None:
    guard = BounceGuard()
    guard.lets_pass("1", MORNING)
    assert guard.lets_pass("1", MORNING - after(5000))
