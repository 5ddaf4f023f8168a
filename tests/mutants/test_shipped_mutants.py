"""No shipped pathway has a mutant that nothing kills and nobody has reviewed.

A sample by default; every mutant with CHAMBERWISE_TESTS=thorough.
"""

from __future__ import annotations

import os
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest
from chamberwise.engine.mutants.measure import measure
from chamberwise.engine.reading.library import Loaded, load_library

FOLDER = Path(str(files("chamberwise.protocols")))
IS_THOROUGH = os.environ.get("CHAMBERWISE_TESTS") == "thorough"
SAMPLE = {"anterior-vitrectomy": 25, "closing-and-after-care": 60, "dropped-nucleus": 80}
OF_OTHERS = 160
LEAST_KILLED = 0.95


@cache
def shipped() -> Loaded:
    return load_library(FOLDER)


@pytest.mark.parametrize("name", sorted(path.stem for path in FOLDER.glob("*.yaml")))
def test_every_survivor_is_reviewed(name: str) -> None:
    found = measure(
        shipped(),
        name,
        every=1 if IS_THOROUGH else SAMPLE.get(name, OF_OTHERS),
        workers=None if IS_THOROUGH else 1,
        broken=frozenset(),  # that every rule holds is a test of its own
    )
    assert found.problems == ()
    assert [each.id for each in found.unreviewed] == []
    assert found.stale == ()
    if IS_THOROUGH:
        assert found.share >= LEAST_KILLED
