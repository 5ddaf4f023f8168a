"""What must hold of every pathway that comes along."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from pathlib import Path
from random import Random

import pytest
from chamberwise.engine.cases.grouping import grouped
from chamberwise.engine.cases.table import cases
from chamberwise.engine.checks.run import check_files, check_for_walk
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.meaning.advance import moves
from chamberwise.engine.model.step import Outcome
from chamberwise.engine.reading.library import Loaded, load_library
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support import naive
from tests.support.build import TODAY
from tests.support.strategies import picks
from tests.support.walking import move_name, passages, random_walk

FOLDER = Path(str(files("chamberwise.protocols")))
PATHWAYS = sorted(path.stem for path in FOLDER.glob("*.yaml"))
LONGEST_WALK = 1000

every_pathway = pytest.mark.parametrize("name", PATHWAYS)


@cache
def shipped() -> Loaded:
    return load_library(FOLDER)


def test_there_are_some() -> None:
    assert "posterior-capsule-rupture" in PATHWAYS


def test_the_whole_library_is_clean() -> None:
    loaded = shipped()
    found = check_files(loaded, list(loaded.files), TODAY)
    told = [problem_text(each, {}) for each in found if each.severity is not Severity.NOTICE]
    assert told == []


@every_pathway
def test_it_can_be_walked(name: str) -> None:
    assert check_for_walk(shipped(), name, TODAY) == []


@every_pathway
def test_it_is_a_draft_until_somebody_approves_it(name: str) -> None:
    pathway = shipped().library.pathways[name]
    assert pathway.is_approved == bool(pathway.approved_by and pathway.approved_on)


@every_pathway
@settings(max_examples=15)
@given(st.randoms(use_true_random=False))
def test_every_walk_ends_in_an_outcome(name: str, random: Random) -> None:
    library = shipped().library
    numbers = (random.randrange(12) for _ in range(LONGEST_WALK))
    *_, last = passages(library, name, numbers)
    assert isinstance(library.step(last.state.place), Outcome)
    assert moves(library, last.state) == ()


@every_pathway
@settings(max_examples=10)
@given(picks)
def test_the_second_writing_of_the_meaning_agrees(name: str, chosen: list[int]) -> None:
    library = shipped().library
    team = naive.set_out(library, name)
    for leg in random_walk(library, name, chosen):
        assert naive.offered(team) == [move_name(move) for move in moves(library, leg.before)]
        naive.go(team, move_name(leg.move))
        assert team.place == leg.made.state.place


@every_pathway
def test_every_case_has_an_outcome(name: str) -> None:
    library = shipped().library
    if library.pathways[name].cases is None:
        pytest.skip("it has no table of cases")
    found = cases(library, name)
    assert [case for case in found if case.problem or case.outcome is None] == []
    assert [case.combination for case in found if case.improbable and not case.looked_again] == []
    assert len(grouped(found)) <= len(found)


@every_pathway
def test_every_case_in_which_something_is_unclear_has_an_outcome(name: str) -> None:
    library = shipped().library
    if library.pathways[name].cases is None:
        pytest.skip("it has no table of cases")
    found = cases(library, name, cannot_tell=True)
    assert [(case.combination, case.problem) for case in found if case.problem] == []
