"""A small library, a clock that ticks when it is read, and walks over them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path

from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.engine.reading.library import Loaded, load_library
from chamberwise.engine.walk.walk import Walk, make, set_out
from chamberwise.tui.sitting import Sitting, sit_down

LIBRARY = Path(__file__).parent / "library"
MORNING = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)
TODAY = MORNING.date()


@dataclass
class Ticking:
    """A clock that goes on by the same span each time it is read."""

    tick: timedelta = timedelta(seconds=1)
    now: datetime = field(default=MORNING)

    def __call__(self) -> datetime:
        self.now += self.tick
        return self.now


@cache
def loaded() -> Loaded:
    return load_library(LIBRARY)


def walked(typed: Iterable[str] = (), pathway: str = "leaking-wound") -> Walk:
    """Return the walk after some moves: an answer's name, or `done`."""
    clock = Ticking()
    walk = set_out(loaded().library, pathway, "0123456789abcdef", clock())
    for word in typed:
        walk = make(walk, Done() if word == "done" else Answered(word), clock())
    return walk


def sitting(folder: Path | None = None, pathway: str = "leaking-wound") -> Sitting:
    """Return a fresh walk, kept in a folder or not at all."""
    return sit_down(loaded(), pathway, Ticking(), folder)
