"""Scenarios: the same seed gives the same one, ten in a row differ, none is impossible."""

from __future__ import annotations

from collections import Counter

import pytest
from chamberwise.engine.drill.generate import NoScenarioError
from chamberwise.engine.drill.scenario import Scenario, is_true

from tests.engine.drill.stage import scenario, shipped

BOOKS = sorted(shipped()[1].books)
SEEDS = range(60)


def told(of: Scenario) -> tuple[object, ...]:
    return (
        of.opening.id,
        of.cue,
        of.decoys,
        of.injects,
        of.brief,
        tuple(of.truth.items()),
        of.first_cue,
    )


@pytest.mark.parametrize("pathway", BOOKS)
def test_a_seed_gives_one_scenario(pathway: str) -> None:
    for seed in SEEDS:
        first = told(scenario(None, seed, pathway))
        scenario.cache_clear()
        assert told(scenario(None, seed, pathway)) == first


@pytest.mark.parametrize("pathway", BOOKS)
@pytest.mark.parametrize("begin", [0, 100, 1000])
def test_ten_seeds_in_a_row_differ(pathway: str, begin: int) -> None:
    ten = [scenario(None, seed, pathway) for seed in range(begin, begin + 10)]
    assert len({told(each) for each in ten}) == 10
    assert len({each.cue for each in ten}) >= 4
    assert len({(each.cue, each.brief) for each in ten}) == 10
    assert len({tuple(each.injects) for each in ten}) >= 3


@pytest.mark.parametrize("pathway", BOOKS)
def test_no_scenario_is_impossible(pathway: str) -> None:
    cases = shipped()[0].library.pathways[pathway].cases
    assert cases is not None
    for seed in SEEDS:
        of = scenario(None, seed, pathway)
        assert not any(is_true(of, each.when, of.truth) for each in cases.impossible)


def test_stages_are_drawn_as_often_as_they_were_counted() -> None:
    """1,042 ruptures of 2014 to 2018: 60 % nucleus, 24 % cortex, 8 % lens, 4 %, 4 % (read)."""
    drawn = Counter(dict(scenario(None, seed).opening.known)["stage"] for seed in range(1000))
    counted = {
        "nucleus": 60,
        "cortex": 24,
        "lens-insertion": 8,
        "viscoelastic-removal": 4,
        "hydrodissection": 4,
    }
    assert all(abs(drawn[name] / 10 - share) < 4 for name, share in counted.items())


def test_a_name_that_is_nothing_is_refused() -> None:
    with pytest.raises(NoScenarioError, match="fifth-of-six"):
        scenario("no-such-thing")
