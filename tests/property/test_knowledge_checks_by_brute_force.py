"""The checks on what can be known where, against every walk by `advance`, nothing forgotten."""

from __future__ import annotations

from chamberwise.engine.checks.knowledge import (
    answers_cover,
    branch_cannot_decide,
    never_comes_up,
    trapped,
    used_before_known,
)
from chamberwise.engine.checks.shape import loop_without_bound, loop_without_exit
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import CANNOT_TELL, Branch, Outcome, Question
from hypothesis import given

from tests.property.test_checks_against_oracles import reached
from tests.support.strategies import libraries
from tests.support.subjects import places, subject
from tests.support.truth import truths, visited
from tests.support.walking import Everything, everything

any_library = libraries(most_pathways=2) | libraries(tame=False, most_pathways=2)


@given(any_library)
def test_branch_cannot_decide(library: Library) -> None:
    for truth in truths(library):
        found = places(branch_cannot_decide.check, subject(library, truth.name))
        assert found == truth.undecided


@given(any_library)
def test_used_before_known(library: Library) -> None:
    for truth in truths(library):
        expected = {
            (step.id, name)
            for step in truth.pathway.steps.values()
            if isinstance(step, Branch) and step.id in truth.possible
            for row in step.rows
            for name, _ in row.when.terms
            if not truth.is_ever_known(step.id, name)
        }
        problems = used_before_known.check(subject(library, truth.name))
        assert {(each.pointer[1], each.pointer[-1]) for each in problems} == expected


@given(any_library)
def test_never_comes_up(library: Library) -> None:
    for truth in truths(library):
        by_arrows = reached(truth.pathway, truth.pathway.start)
        never_there = by_arrows - set(truth.possible)
        never_asked = {
            step.id
            for step in truth.pathway.steps.values()
            if isinstance(step, Question) and step.id in truth.possible
        } - truth.asked
        found = places(never_comes_up.check, subject(library, truth.name))
        assert found == never_there | never_asked


@given(any_library)
def test_answers_do_not_cover(library: Library) -> None:
    for truth in truths(library):
        expected = set()
        by_arrows = reached(truth.pathway, truth.pathway.start)
        for step in truth.pathway.steps.values():
            if isinstance(step, Question):
                every = (
                    set()
                    if step.id not in by_arrows
                    else {value.id for value in library.finding(truth.name, step.ask).values}
                )
                here = truth.values(step.id, step.ask) if step.id in truth.possible else every
                answered = {value for answer in step.answers for value in answer.means}
                if here - answered or all(each.id != CANNOT_TELL for each in step.answers):
                    expected.add(step.id)
        assert places(answers_cover.check, subject(library, truth.name)) == expected


@given(any_library)
def test_trapped_is_said_only_where_no_outcome_can_be_reached(library: Library) -> None:
    for truth in truths(library):
        hopeless = {state.place.step for state in no_outcome_ahead(library, truth.all[0])}
        passed = {
            place.step
            for made in truth.all[0].passages
            if made.state.place.step in hopeless
            for place in visited(made)
        }
        assert places(trapped.check, subject(library, truth.name)) <= hopeless | passed


@given(any_library)
def test_where_no_outcome_can_be_reached_some_check_says_so(library: Library) -> None:
    checks = (
        trapped.check,
        branch_cannot_decide.check,
        answers_cover.check,
        loop_without_bound.check,
        loop_without_exit.check,
    )
    found = everything(library, "p0", 1500)
    if found.complete and any(no_outcome_ahead(library, found)):
        told = [
            problem
            for name in library.pathways
            for check in checks
            for problem in check(subject(library, name))
        ]
        assert told


def no_outcome_ahead(library: Library, found: Everything) -> set[State]:
    """Return the states from which no walk ends in an outcome."""
    ends = {
        state
        for state, after in found.onward.items()
        if not after and isinstance(library.step(state.place), Outcome)
    }
    free, grown = set(ends), True
    while grown:
        more = {state for state, after in found.onward.items() if free & {*after}} - free
        free |= more
        grown = bool(more)
    return set(found.onward) - free
