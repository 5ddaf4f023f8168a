"""The same work for several names, each in a process of its own where that is safe."""

from __future__ import annotations

import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from multiprocessing import get_context
from typing import Any, TypeVar

Done = TypeVar("Done")

_WORK: list[Callable[[str], Any]] = []
"""What the processes do. They are copies of this one, so that nothing has to be handed over."""


def side_by_side(work: Callable[[str], Done], names: Sequence[str]) -> Iterator[Done]:
    """Yield what comes of each name, in their order, as soon as it is there.

    What comes of it has to be picklable. With one core, beside other threads, or where a process
    cannot be copied safely, one name is worked after the other.
    """
    if len(names) < 2 or not _can_copy():
        yield from map(work, names)
        return
    _WORK[:] = [work]
    with get_context("fork").Pool(min(_cores(), len(names)), _begin) as pool:
        yield from pool.imap(_of_copy, names)


def _can_copy() -> bool:
    return sys.platform == "linux" and threading.active_count() == 1 and _cores() > 1


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if sys.platform == "linux" else 1


def _begin() -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the first process hears it and ends the others


def _of_copy(name: str) -> Any:
    return _WORK[0](name)
