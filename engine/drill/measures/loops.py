"""Requests and whether their loop was closed: asked of somebody, read back, reported done."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.drill.entries import Asked, Milliseconds, ReadBack, ReportedDone
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.run import Run


@dataclass(frozen=True, slots=True)
class Loop:
    """One request and when it was read back and reported done, if it was."""

    asked: Asked
    read_back: Milliseconds | None
    done: Milliseconds | None

    @property
    def is_closed(self) -> bool:
        """Whether it was both read back and reported done."""
        return self.read_back is not None and self.done is not None


def loops(run: Run) -> tuple[Loop, ...]:
    """Return every request of a run in its order. One made twice is answered by what follows."""
    return tuple(
        Loop(entry, _after(run, entry, ReadBack), _after(run, entry, ReportedDone))
        for entry in run.entries
        if isinstance(entry, Asked)
    )


def closure(of: tuple[Loop, ...]) -> Share:
    """Return how many loops were closed."""
    return Share(sum(each.is_closed for each in of), len(of))


def _after(
    run: Run, asked: Asked, kind: type[ReadBack] | type[ReportedDone]
) -> Milliseconds | None:
    return next(
        (
            entry.at
            for entry in run.entries
            if isinstance(entry, kind) and entry.request == asked.request and entry.at >= asked.at
        ),
        None,
    )
