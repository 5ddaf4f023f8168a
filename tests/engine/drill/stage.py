"""Shipped drills, and runs of them typed line by line."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime
from functools import lru_cache
from pathlib import Path

from chamberwise.engine.drill.entries import Began, Mode
from chamberwise.engine.drill.fold import Drill, begin_drill
from chamberwise.engine.drill.generate import drill_library, generate
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.taking import SECOND, Typed, is_over, take, tick
from chamberwise.engine.reading.drills import Drills, read_drills
from chamberwise.engine.reading.library import Loaded, load_library

PROTOCOLS = Path(__file__).parents[3] / "protocols"
RUPTURE = "posterior-capsule-rupture"
ON = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)
BETWEEN = 4


@lru_cache(maxsize=1)
def shipped() -> tuple[Loaded, Drills]:
    return load_library(PROTOCOLS), read_drills(PROTOCOLS)


@lru_cache(maxsize=64)
def scenario(name: str | None = None, seed: int = 3, pathway: str = RUPTURE) -> Scenario:
    loaded, drills = shipped()
    book = drills.books[pathway]
    library = drill_library(loaded.library, drills.truth, book)
    return generate(library, book, drills.truth, drills.phrases, seed, name)


def began(of: Scenario, mode: Mode = Mode.RUN) -> Began:
    return Began(ON, of.name, of.seed, of.pathway, "0.1", "digest", mode, ("surgeon",))


def typed(of: Scenario, lines: Iterable[str | tuple[int, str]]) -> Drill:
    """Return the drill after some lines: each with its second after the first cue, or 4 s on."""
    drill, at = begin_drill(of, began(of)), of.first_cue * SECOND
    drill = tick(drill, at).drill
    for line in lines:
        seconds, text = line if isinstance(line, tuple) else (None, line)
        at = at + BETWEEN * SECOND if seconds is None else (of.first_cue + seconds) * SECOND
        drill = tick(drill, at).drill
        if is_over(drill):
            break
        drill = take(drill, Typed(text, at)).drill
    return drill
