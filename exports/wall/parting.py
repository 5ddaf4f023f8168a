"""Where a long main line is parted, so that each sheet has few boxes and all are about as full."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from math import inf
from typing import NamedTuple


class Measured(NamedTuple):
    """A row as the parting sees it: its height, its boxes, whether a phase begins with it."""

    height: float
    boxes: int
    opens: bool


def parted(
    rows: Sequence[Measured], count: int, most: int, *, by_phase: bool
) -> tuple[int, ...] | None:
    """Return where each of at most so many sheets begins, the highest of them as low as can be.

    `None` where no parting keeps to the most boxes; a single row may have more.
    """

    @cache
    def best(start: int, left: int) -> tuple[float, tuple[int, ...]]:
        if start == len(rows):
            return 0.0, ()
        if not left:
            return inf, ()
        found: tuple[float, tuple[int, ...]] = (inf, ())
        height, boxes = 0.0, 0
        for end in range(start + 1, len(rows) + 1):
            height += rows[end - 1].height
            boxes += rows[end - 1].boxes
            if boxes > most and end - start > 1:
                break
            if by_phase and end < len(rows) and not rows[end].opens:
                continue
            after, starts = best(end, left - 1)
            found = min(found, (max(height, after), (start, *starts)))
        return found

    highest, starts = best(0, count)
    return starts if highest < inf else None
