"""Work done beside this process in copies of it, and done here where there can be none.

What comes of it is the same either way, and in the same order, as long as the work goes by what it
is given alone. A copy that dies takes nothing along: what it was at is done here.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import BrokenExecutor, Future, ProcessPoolExecutor
from contextlib import AbstractContextManager
from multiprocessing import active_children, get_context, parent_process
from pathlib import Path
from typing import Any, Generic, TypeVar

Item = TypeVar("Item")
Done = TypeVar("Done")


class Promise(Generic[Done]):
    """What will come of some work."""

    def __init__(self, here: Callable[[], Done], beside: Future[Done] | None) -> None:
        self._here, self._beside = here, beside

    @property
    def is_done(self) -> bool:
        """Whether nothing is being done about it in a copy."""
        return self._beside is None or self._beside.done()

    def result(self) -> Done:
        """Return what came of it; what failed in a copy is done here, and fails here if it must."""
        if self._beside is not None:
            try:
                return self._beside.result()
            except Exception:
                self._beside = None
        return self._here()


class Copies(AbstractContextManager["Copies"]):
    """Copies of this process: as many as there are cores, and at most so many.

    They are made as soon as the first work begins, of the process as it is then. The work has to
    be a function of a module; what it is given and what comes of it have to be picklable.
    """

    def __init__(self, most: int) -> None:
        self.count = min(_cores(), most) if can_copy() else 0
        self._pool: ProcessPoolExecutor | None = None
        if self.count:
            gc.freeze()  # what all copies share is not looked through, so it stays shared
            self._pool = ProcessPoolExecutor(self.count, get_context("fork"), _begin)

    def begin(self, work: Callable[..., Done], *given: Any) -> Promise[Done]:
        """Begin some work; where nothing can be done beside, it is done when it is asked for."""
        return Promise(lambda: work(*given), self._begun(work, given))

    def each(self, work: Callable[[Item], Done], items: Iterable[Item]) -> Iterator[Done]:
        """Yield what comes of each item, in their order, as soon as it is there."""
        for promise in [self.begin(work, item) for item in items]:
            yield promise.result()

    def __exit__(self, *_error: object) -> None:
        """End the copies, whatever they are at."""
        if self._pool is not None:
            for copy in active_children():
                copy.terminate()
            self._pool.shutdown(cancel_futures=True)

    def _begun(self, work: Callable[..., Done], given: tuple[Any, ...]) -> Future[Done] | None:
        try:
            return self._pool.submit(work, *given) if self._pool else None
        except (OSError, BrokenExecutor):  # no room for a copy, or one has died
            return None


def can_copy() -> bool:
    """Whether a copy of this process is safe and of use: more cores, and no other thread.

    Libraries start threads that Python does not know of; the system does.
    """
    return sys.platform == "linux" and _cores() > 1 and threading.active_count() == _threads() == 1


def _threads() -> int:
    try:
        return sum(1 for _ in Path("/proc/self/task").iterdir())
    except OSError:
        return 0


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if sys.platform == "linux" else 1


def _begin() -> None:
    """In a copy: let the first process hear an interruption, and end with it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_the_first, daemon=True).start()


def _end_with_the_first() -> None:
    first = parent_process()
    if first is not None:
        first.join()
        os._exit(1)
