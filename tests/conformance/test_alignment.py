"""Published alignments.

Model 1 is Fig. 3.2 of van der Aalst, Process Mining: Data Science in Action (2016), and model 1 of
van der Aalst, Adriansyah and van Dongen, WIREs Data Mining and Knowledge Discovery 2 (2012)
182-192: a; then b or c beside d; e; then back by f, or g, or h. Costs of the seven traces: read, as
encoded in the test suite of a public conformance library. The log of 1,391 cases: memory, and
checked here by its sums; its fitness against model 2: read (0.8), and computed to six places with a
second program.
"""

from __future__ import annotations

from random import Random

import pytest
from chamberwise.engine.drill.aligning.alignment import Kind
from rapidfuzz.distance import Indel

from tests.support.nets import aligned, fitness, runs

MODEL_1 = {
    "first": [("a", "bc+d")],
    "bc+d": [("b", "d"), ("c", "d"), ("d", "bc")],
    "d": [("d", "e")],
    "bc": [("b", "e"), ("c", "e")],
    "e": [("e", "fgh")],
    "fgh": [("f", "bc+d"), ("g", "last"), ("h", "last")],
}
MODEL_2 = {
    "first": [("a", "1")],
    "1": [("c", "2")],
    "2": [("d", "3")],
    "3": [("e", "4")],
    "4": [("h", "last")],
}

SEVEN = [
    ("acefbefdbeg", 2, 0.8750),
    ("abcdeh", 1, 0.9091),
    ("bdefcdeh", 1, 0.9231),
    ("acdfbdeg", 1, 0.9231),
    ("acdefeh", 2, 0.8333),
    ("ag", 3, 0.5714),
    ("abcdefdcbefgh", 4, 0.7778),
]

LOG = {
    "acdeh": 455,
    "abdeg": 191,
    "adceh": 177,
    "abdeh": 144,
    "acdeg": 111,
    "adceg": 82,
    "adbeh": 56,
    "acdefdbeh": 47,
    "adbeg": 38,
    "acdefbdeh": 33,
    "acdefbdeg": 14,
    "acdefdbeg": 11,
    "adcefcdeh": 9,
    "adcefdbeh": 8,
    "adcefbdeg": 5,
    "acdefbdefdbeg": 3,
    "adcefdbeg": 2,
    "adcefbdefbdeg": 2,
    "adcefdbefbdeh": 1,
    "adbefbdefdbeg": 1,
    "adcefdbefcdefdbeg": 1,
}


@pytest.mark.parametrize(("trace", "cost", "published"), SEVEN)
def test_the_seven_traces(trace: str, cost: int, published: float) -> None:
    assert aligned(MODEL_1, trace).cost == cost
    assert fitness(MODEL_1, trace) == pytest.approx(published, abs=5e-5)


def test_the_log_is_the_published_one_by_its_sums() -> None:
    assert len(LOG) == 21
    assert sum(LOG.values()) == 1391
    assert sum(len(trace) * cases for trace, cases in LOG.items()) == 7539


def test_the_log_fits_the_two_models_as_published() -> None:
    assert all(aligned(MODEL_1, trace).cost == 0 for trace in LOG)
    cost = sum(aligned(MODEL_2, trace).cost * cases for trace, cases in LOG.items())
    worst = sum((len(trace) + 5) * cases for trace, cases in LOG.items())
    assert round(1 - cost / worst, 1) == 0.8
    assert 1 - cost / worst == pytest.approx(0.801021, abs=5e-7)


@pytest.mark.parametrize(
    ("trace", "cost"),
    [("adceh", 0), ("adbeg", 0), ("acdefbdeh", 0), ("acdh", 1), ("cadeh", 2)],
)
def test_what_the_model_allows_costs_nothing_whatever_its_edit_distance(
    trace: str, cost: int
) -> None:
    """Computed with two programs: an edit distance to one run would punish the first three."""
    assert aligned(MODEL_1, trace).cost == cost


def test_a_second_library_finds_the_same_costs() -> None:
    """With unit costs the cheapest alignment is the least Indel distance to any run."""
    every_run = list(runs(MODEL_1, 13))
    random = Random(20261125)
    for _ in range(120):
        trace = "".join(random.choices("abcdefgh", k=random.randint(0, 8)))
        nearest = min(Indel.distance(trace, run) for run in every_run)
        assert aligned(MODEL_1, trace).cost == nearest, trace


def test_of_several_cheapest_ones_the_synchronous_move_comes_first_then_the_models() -> None:
    found = aligned({"first": [("a", "x")], "x": [("b", "last"), ("c", "last")]}, "ad")
    said = [(move.kind, move.doing) for move in found.moves]
    assert said == [(Kind.SYNCHRONOUS, "a"), (Kind.MODEL, "b"), (Kind.LOG, None)]
