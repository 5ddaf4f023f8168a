"""A pathway of twelve steps whose state space two other tools have counted: 18 states, 21 arrows.

The counts are those of pyModelChecking and of Storm over the same pathway, with nothing forgotten.
"""

from __future__ import annotations

from collections.abc import Iterator
from unittest.mock import patch

import pytest
from chamberwise.engine.exploration import explore as exploring
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.exploration.explored import trapped
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Question, Step

from tests.support.build import ask, changed, do, end, finding, library, pathway

STATES, ARROWS = 18, 21


@pytest.fixture
def example() -> Library:
    whole = pathway(
        "example",
        do("s1", "s2"),
        ask("s2", "vitreous", present="s3", absent="s5"),
        do("s3", "s4", stale="vitreous"),
        do("s4", "s2"),
        ask("s5", "nucleus", none="s8", fragments="s6", bulk="s7", dropped="s11"),
        do("s6", "s2", stale="nucleus vitreous"),
        do("s7", "s2", known={"nucleus": "none"}, stale="vitreous"),
        ask("s8", "support", adequate="s9", inadequate="s10"),
        do("s9", "s12"),
        do("s10", "s12"),
        do("s11", "s12"),
        end("s12"),
    )
    findings = [
        finding("vitreous", "absent present"),
        finding("nucleus", "none fragments bulk dropped"),
        finding("support", "adequate inadequate"),
    ]
    return library(without_cannot_tell(whole), findings=findings)


def without_cannot_tell(whole: Pathway) -> Pathway:
    return pathway(whole.id, *(_certain(step) for step in whole.steps.values()))


def _certain(step: Step) -> Step:
    if not isinstance(step, Question):
        return step
    return changed(step, answers=tuple(each for each in step.answers if each.means))


def test_as_many_states_and_arrows_as_other_tools_count(example: Library) -> None:
    with patch.object(exploring, "mark_live"):
        found = explore(example, "example")
    assert len(found) == STATES
    assert sum(map(len, found.leads_to)) == ARROWS


def test_an_end_can_be_reached_from_everywhere(example: Library) -> None:
    assert list(trapped(explore(example, "example"))) == []


def test_every_step_comes_up(example: Library) -> None:
    found = explore(example, "example")
    assert {name for name, _ in found.seen_in("example")} == set(example.pathways["example"].steps)


def distances(example: Library) -> Iterator[tuple[str, int]]:
    found = explore(example, "example")
    for number in range(len(found)):
        yield found.at_node(number).step, len(found.way_to(number))


def test_the_shortest_ways_are_those_published(example: Library) -> None:
    """To `s9` by s1 s2 s5 s8, to `s12` over `s11` by s1 s2 s5 s11."""
    nearest: dict[str, int] = {}
    for step, distance in distances(example):
        nearest[step] = min(distance, nearest.get(step, distance))
    assert (nearest["s9"], nearest["s3"], nearest["s12"]) == (4, 2, 4)


def test_the_search_stops_at_its_limit(example: Library) -> None:
    found = explore(example, "example", 5)
    assert found.stopped
    assert not explore(example, "example", STATES + 1).stopped
