"""The same work for several names, each in a process of its own where that is safe."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any, TypeVar

from chamberwise.tui.copies import Copies

Done = TypeVar("Done")

_WORK: list[Callable[[str], Any]] = []
"""What the processes do. They are copies of this one, so that nothing has to be handed over."""


def side_by_side(work: Callable[[str], Done], names: Sequence[str]) -> Iterator[Done]:
    """Yield what comes of each name, in their order, as soon as it is there.

    What comes of it has to be picklable. With one name, or where the process cannot be copied,
    one is worked after the other.
    """
    if len(names) < 2:
        yield from map(work, names)
        return
    _WORK[:] = [work]
    with Copies(len(names)) as copies:
        yield from copies.each(_of_copy, names)


def _of_copy(name: str) -> Any:
    return _WORK[0](name)
