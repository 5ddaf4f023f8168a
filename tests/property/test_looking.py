"""What is told of steps without looking at every state, and with, is what every walk shows."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from chamberwise.engine.checks.knowledge.at_sight import doubtful, safe_by_form, unwitnessed
from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.exploration.widest import widest
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import CANNOT_TELL, Branch, Question, Step
from chamberwise.engine.proof.sighting import Sighted, exits_end, sighted
from hypothesis import given

from tests.support.strategies import libraries
from tests.support.subjects import entries
from tests.support.truth import Truth, truths

any_library = libraries(most_pathways=2) | libraries(tame=False, most_pathways=2)


def looked_at(step: Step) -> set[str]:
    """Return the findings a step looks at."""
    if isinstance(step, Question):
        return {step.ask}
    rows = step.rows if isinstance(step, Branch) else ()
    return {name for row in rows for name, _ in row.when.terms}


Looking = Callable[[Library, str], Explored | Sighted]


def told(library: Library, pathway: str, looking: Looking) -> dict[str, tuple[int, int, bool]]:
    """Return, by step, what is seen of it from every entry whose walks come through, together."""
    found: dict[str, tuple[int, int, bool]] = {}
    for entry in entries(library, pathway):
        for step, seen in looking(library, entry).seen_in(pathway):
            possible, ruled_out, asked = found.get(step, (0, 0, False))
            found[step] = (
                possible | seen.possible,
                ruled_out | seen.ruled_out,
                asked or seen.asked,
            )
    return found


@pytest.mark.parametrize("looking", [explore, sighted])
@given(library=any_library)
def test_what_is_seen_at_a_step_is_what_every_walk_shows(
    looking: Looking, library: Library
) -> None:
    if looking is sighted and not exits_end(library):
        return
    for truth in truths(library):
        seen = told(library, truth.name, looking)
        assert set(seen) == set(truth.possible)
        for name, (possible, ruled_out, asked) in seen.items():
            step = truth.pathway.steps[name]
            for finding in looked_at(step):
                every = layout_of(library).field(truth.name, finding).every
                assert possible & every == truth.union(name) & every
                assert ruled_out & every == every & ~_in_every(truth, name)
            assert not isinstance(step, Question) or asked == (name in truth.asked)


def _in_every(truth: Truth, step: str) -> int:
    bits = -1
    for each in truth.possible[step]:
        bits &= each
    return bits


@given(any_library)
def test_the_widest_is_never_narrower_than_what_a_walk_leaves_possible(library: Library) -> None:
    for truth in truths(library):
        for name in truth.possible:
            wide = 0
            for entry in entries(library, truth.name):
                found = widest(compiled(library, entry))
                wide |= found.get(Place(truth.name, name), 0)
            assert truth.union(name) & ~wide == 0


@given(any_library)
def test_what_is_safe_by_form_is_safe_on_every_walk(library: Library) -> None:
    for truth in truths(library):
        if safe_by_form(library, truth.pathway, entries(library, truth.name)):
            assert truth.undecided == set()
            assert list(without_an_answer(truth)) == []


def without_an_answer(truth: Truth) -> Iterator[str]:
    for name in truth.possible:
        step = truth.pathway.steps[name]
        if isinstance(step, Question):
            answered = {value for answer in step.answers for value in answer.means}
            can_not_tell = any(answer.id == CANNOT_TELL for answer in step.answers)
            if truth.values(name, step.ask) - answered or not can_not_tell:
                yield name


def everything_comes_up(truth: Truth) -> bool:
    steps = truth.pathway.steps
    questions = {name for name, step in steps.items() if isinstance(step, Question)}
    return (
        set(truth.possible) == set(steps)
        and truth.asked == questions
        and all(
            truth.is_ever_known(name, finding)
            for name, step in steps.items()
            if isinstance(step, Branch)
            for finding in looked_at(step)
        )
    )


@given(any_library)
def test_some_of_the_states_show_nothing_that_no_walk_shows(library: Library) -> None:
    truth = Truth(library, "p0")
    if truth.is_whole and exits_end(library):
        whole = unwitnessed(library, truth.pathway, [explore(library, "p0")])
        assert (not whole) == everything_comes_up(truth)
        assert unwitnessed(library, truth.pathway, [sighted(library, "p0")]) == whole
        for a_spot in (1, 2, 5):
            look = sighted(library, "p0", a_spot)
            missing = unwitnessed(library, truth.pathway, [look])
            assert missing >= whole
            towards = look.with_more(sighted(library, "p0", None, frozenset(missing)))
            assert unwitnessed(library, truth.pathway, [towards]) == whole
        for each in truth.pathway.steps:
            alone = Place("p0", each)
            towards = sighted(library, "p0", None, frozenset([alone]))
            assert (alone in unwitnessed(library, truth.pathway, [towards])) == (alone in whole)


@given(any_library)
def test_what_form_leaves_open_is_seen_on_a_close_look(library: Library) -> None:
    truth = Truth(library, "p0")
    if not truth.is_whole or not exits_end(library):
        return
    closely = doubtful(library, truth.pathway, ["p0"])
    seen = dict(sighted(library, "p0", None, closely).seen_in("p0")) if closely else {}
    undecided = {name for name, each in seen.items() if each.undecided}
    assert undecided == truth.undecided
    for place in closely & {Place("p0", name) for name in seen}:
        step = truth.pathway.steps[place.step]
        if isinstance(step, Question):
            every = layout_of(library).field("p0", step.ask).every
            assert seen[place.step].possible & every == truth.union(place.step) & every
