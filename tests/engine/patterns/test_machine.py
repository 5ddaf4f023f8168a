"""The machines keep what the formulas mean, on every walk up to a length; none could be smaller."""

from __future__ import annotations

import os

import pytest
from chamberwise.engine.patterns.formula import holds
from chamberwise.engine.patterns.machine import Machine

from tests.engine.patterns.every import KINDS, Kind, accepts, formula, machine, named, words

THOROUGH = os.environ.get("CHAMBERWISE_TESTS") == "thorough"
LONGEST = {1: 10, 2: 6, 3: 5, 4: 4} if THOROUGH else {1: 10, 2: 5, 3: 4, 4: 3}
"""By number of atoms: 2,047, 5,461, 37,449 and 69,905 walks, or 2,047, 1,365, 4,681 and 4,369."""

every_kind = pytest.mark.parametrize("kind", KINDS, ids=named)


@every_kind
def test_the_machine_is_the_formula(kind: Kind) -> None:
    watched, meant = machine(kind), formula(kind)
    differ = [
        word
        for word in words(watched.atoms, LONGEST[len(watched.atoms)])
        if accepts(watched, word) is not holds(meant, word)
    ]
    assert differ == []


def reached(watched: Machine, start: int) -> set[int]:
    """Return the states that some letters lead to, the start among them."""
    met, waiting = {start}, [start]
    while waiting:
        for onward in watched.after[waiting.pop()]:
            if onward not in met:
                met.add(onward)
                waiting.append(onward)
    return met


@every_kind
def test_only_from_the_lost_state_is_there_no_way_to_a_good_one(kind: Kind) -> None:
    watched = machine(kind)
    hopeless = {
        state for state in range(len(watched.after)) if not reached(watched, state) & watched.good
    }
    assert hopeless == ({watched.lost} if watched.lost is not None else set())


@every_kind
def test_every_state_is_reached_and_no_two_are_alike(kind: Kind) -> None:
    watched = machine(kind)
    every = range(len(watched.after))
    assert reached(watched, 0) == set(every)
    alike = {(one, other) for one in every for other in every if one < other}
    while True:
        still = {pair for pair in alike if _alike(watched, pair, alike)}
        if still == alike:
            break
        alike = still
    assert alike == set()


def _alike(watched: Machine, pair: tuple[int, int], alike: set[tuple[int, int]]) -> bool:
    one, other = pair
    if (one in watched.good) is not (other in watched.good):
        return False
    after = zip(watched.after[one], watched.after[other], strict=True)
    return all(
        left == right or (min(left, right), max(left, right)) in alike for left, right in after
    )


SIZES = {
    "absence, globally": 2,
    "universality, globally": 2,
    "existence, globally": 2,
    "bounded existence, globally, 2": 4,
    "precedence, globally": 3,
    "response, globally": 2,
    "absence, after": 3,
    "absence, after until": 3,
    "alternate precedence, globally": 3,
    "chain precedence, globally": 3,
    "chain response, globally": 3,
    "responded existence, globally": 3,
    "not co-existence, globally": 4,
}
"""The numbers of states that a table made with MONA gives, the sink among them."""


@pytest.mark.parametrize("name", SIZES)
def test_the_machines_are_as_small_as_published_tools_make_them(name: str) -> None:
    kind = next(each for each in KINDS if named(each) == name)
    assert len(machine(kind).after) == SIZES[name]


NEEDS_AN_END = {
    "existence, globally",
    "existence, after",
    "existence, after until",
    "precedence, after",  # a later opening may still serve
    "response, globally",
    "response, after",
    "response, after until",
    "chain response, globally",
    "responded existence, globally",
}
"""What can be broken by coming to an end; all else is broken at some moment or not at all."""


def is_broken_only_when_lost(watched: Machine) -> bool:
    return len(watched.good) + (watched.lost is not None) == len(watched.after)


def test_what_asks_for_something_to_come_needs_the_end_to_judge() -> None:
    found = {named(kind) for kind in KINDS if not is_broken_only_when_lost(machine(kind))}
    assert found == NEEDS_AN_END
