"""Faults planted in good files are told: by the right name, on the right line.

`python -m tests.engine.checks.planting` plants every one at every place.
"""

from __future__ import annotations

from collections import defaultdict
from functools import cache
from itertools import islice
from pathlib import Path

import pytest
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.reading import codes
from chamberwise.engine.reading.library import Loaded, assemble, read_text

from tests.engine.checks.planting.everything import (
    QUICK,
    TODAY,
    Planted,
    library,
    planted,
)

ROOT = Path(__file__).parents[3]
OWN, SHIPPED = ROOT / "tests" / "library", ROOT / "protocols"
OF_EACH_KIND = 4
OF_SHIPPED = 24

LEFT_TO_FORM = {value.slug for value in vars(codes).values() if isinstance(value, Code)}


@cache
def _library(folder: Path) -> Loaded:
    return library(folder)


@cache
def _by_kind() -> dict[str, list[Planted]]:
    """Return of each kind a few faults, spread evenly over all places of the own library."""
    every = defaultdict(list)
    for each in planted(_library(OWN)):
        every[each.fault.kind].append(each)
    return {
        kind: [found[len(found) * place // OF_EACH_KIND] for place in range(OF_EACH_KIND)]
        if len(found) > OF_EACH_KIND
        else found
        for kind, found in every.items()
    }


@cache
def _shipped() -> list[Planted]:
    """Return faults of the cheap kinds, spread evenly over all places of the shipped files."""
    number = sum(1 for _ in planted(_library(SHIPPED), QUICK))
    step = number // OF_SHIPPED
    return list(islice(planted(_library(SHIPPED), QUICK), step // 2, None, step))


@pytest.mark.parametrize("folder", [OWN, SHIPPED], ids=["own", "shipped"])
def test_undamaged_files_are_clean(folder: Path) -> None:
    loaded = _library(folder)
    found = check_files(loaded, list(loaded.files), TODAY)
    assert [f"{each.file}: {each.message} [{each.code}]" for each in found] == []


@pytest.mark.parametrize("kind", _by_kind())
def test_a_planted_fault_is_told_where_it_stands(kind: str) -> None:
    assert [found for each in _by_kind()[kind] if (found := each.missed())] == []


def test_faults_planted_in_shipped_files_are_told() -> None:
    assert [found for each in _shipped() if (found := each.missed())] == []


def test_enough_is_planted() -> None:
    assert sum(len(found) for found in _by_kind().values()) + len(_shipped()) >= 200


@pytest.mark.parametrize("kind", ["unknown key", "misspelt key", "missing key", "bad date", "tag"])
def test_what_could_not_be_read_is_not_held_against_the_rest(kind: str) -> None:
    """An error of form brings no reports about what only seems missing because of it."""
    for each in _by_kind()[kind]:
        told = {problem.code for problem in each.problems()}
        assert told <= LEFT_TO_FORM, each.fault


def test_a_broken_vocabulary_is_blamed_alone() -> None:
    loaded = _library(OWN)
    broken = next(name for name, file in loaded.files.items() if file.words)
    files = [
        read_text("vocabulary: [x\n", name) if name == broken else file
        for name, file in loaded.files.items()
    ]
    found = check_files(assemble(files), list(loaded.files), TODAY)
    assert {(each.file, each.code) for each in found} == {(broken, "yaml-syntax")}
