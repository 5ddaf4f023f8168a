"""No mutant of a shipped pathway survives that nobody has reviewed.

A sample by default; every mutant with CHAMBERWISE_TESTS=thorough, which also tells entries whose
mutant is killed by now.
"""

from __future__ import annotations

import os
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.mutants.measure import measure
from chamberwise.engine.mutants.strength import Strength
from chamberwise.engine.reading.library import Loaded, load_library
from chamberwise.engine.reading.reviewed import reviewed_of

FOLDER = Path(str(files("chamberwise.protocols")))
IS_THOROUGH = os.environ.get("CHAMBERWISE_TESTS") == "thorough"
REVIEWED = {
    "anterior-vitrectomy": 25,
    "closing-and-after-care": 60,
    "dropped-nucleus": 60,
    "posterior-capsule-rupture": 120,
}
"""Of the mutants each so-manieth makes the sample."""

LEAST_KILLED = 0.95


@cache
def shipped() -> Loaded:
    return load_library(FOLDER)


def found(name: str, every: int) -> Strength:
    # That every rule holds is a test of its own.
    workers = None if IS_THOROUGH else 1
    every = 1 if IS_THOROUGH else every
    return measure(shipped(), name, every=every, workers=workers, broken=frozenset())


def test_every_shipped_pathway_is_measured() -> None:
    assert {*REVIEWED} == {path.stem for path in FOLDER.glob("*.yaml")}


@pytest.mark.parametrize("name", [*REVIEWED])
def test_every_entry_speaks_of_an_edit_that_is_made(name: str) -> None:
    reviewed = reviewed_of(shipped().file_of[name], name)
    made = [each.id for each in mutants(shipped().library, name)]
    assert [each.edit for each in reviewed.entries if not any(map(each.covers, made))] == []


@pytest.mark.parametrize(("name", "every"), REVIEWED.items())
def test_every_survivor_is_reviewed(name: str, every: int) -> None:
    strength = found(name, every)
    assert strength.problems == ()
    assert [each.id for each in strength.unreviewed] == []
    assert strength.stale == ()
    if IS_THOROUGH:
        assert strength.share >= LEAST_KILLED
