"""Leaving long work off in its midst once nobody waits any more for what it would find."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar


class NobodyWaitsError(Exception):
    """What was worked at is wanted no longer; nothing was found."""


_IS_WANTED: ContextVar[Callable[[], bool] | None] = ContextVar("is_wanted", default=None)


@contextmanager
def wanted_while(is_wanted: Callable[[], bool]) -> Iterator[None]:
    """Let work in this thread go on only while somebody waits for it."""
    before = _IS_WANTED.set(is_wanted)
    try:
        yield
    finally:
        _IS_WANTED.reset(before)


def go_on_if_wanted() -> None:
    """Raise `NobodyWaitsError` where nobody waits; searches ask it every few thousand states."""
    is_wanted = _IS_WANTED.get()
    if is_wanted is not None and not is_wanted():
        raise NobodyWaitsError
