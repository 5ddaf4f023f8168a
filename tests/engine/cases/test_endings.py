"""Where the walks of a combination may end, against going through all states one by one."""

from __future__ import annotations

from chamberwise.engine.cases.endings import may_end_in
from chamberwise.engine.cases.table import cases
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Answered, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import CANNOT_TELL, Outcome, Question
from hypothesis import given

from tests.engine.cases.tables import ENTRY, tables
from tests.support.build import ask, bounded, do, end, finding, hand_over, library, pathway

First = frozenset[tuple[str, str]]


@given(tables())
def test_outcomes_are_those_of_every_walk_with_these_first_answers(drawn: Library) -> None:
    found = cases(drawn, ENTRY, cannot_tell=True)
    combinations = [case.combination for case in found]
    expected = every_end(drawn, {"a", "b"})
    told = may_end_in(drawn, ENTRY, combinations)
    assert [set(each) for each in told] == [
        {place for place, first in expected if first <= set(combination)}
        for combination in combinations
    ]


def every_end(drawn: Library, over: set[str]) -> set[tuple[Place, First]]:
    """Return every outcome with the first answers of some walk that ends there."""
    state = begin(drawn, ENTRY).state
    met: set[tuple[State, First]] = {(state, frozenset())}
    waiting = list(met)
    ends = set()
    for state, first in waiting:
        if isinstance(drawn.step(state.place), Outcome):
            ends.add((state.place, first))
        for move in moves(drawn, state):
            onward = advance(drawn, state, move)
            for given_now in after(drawn, state, move, first, over):
                if (onward, given_now) not in met:
                    met.add((onward, given_now))
                    waiting.append((onward, given_now))
    return ends


def after(drawn: Library, state: State, move: object, first: First, over: set[str]) -> list[First]:
    step = drawn.step(state.place)
    if not isinstance(step, Question) or not isinstance(move, Answered):
        return [first]
    if step.ask not in over or step.ask in dict(first):
        return [first]
    if move.answer == CANNOT_TELL:
        return [first | {(step.ask, CANNOT_TELL)}]
    field = layout_of(drawn).field(state.place.pathway, step.ask)
    means = next(answer.means for answer in step.answers if answer.id == move.answer)
    values = field.values(field.mask(means) & state.possible)
    return [first | {(step.ask, value)} for value in values]


def test_a_walk_that_does_not_ask_is_one_of_every_answer() -> None:
    one = library(
        pathway(
            "one",
            ask("look", "wound", dry="away", leaking="depth"),
            bounded(do("press", "depth"), 2, "given-up"),
            ask("depth", "depth", flat="press", deep="closed", unclear="press"),
            hand_over("away", "two", rested="closed"),
            end("closed"),
            end("given-up"),
        ),
        pathway("two", do("rest", "rested"), end("rested")),
        findings=[finding("wound", "dry leaking"), finding("depth", "flat deep")],
    )
    closed, given_up = Place("one", "closed"), Place("one", "given-up")
    combinations = [
        (("wound", wound), ("depth", depth))
        for wound in ("dry", "leaking")
        for depth in ("flat", "deep", "cannot tell")
    ]
    assert may_end_in(one, "one", combinations) == [
        (closed,),
        (closed,),
        (closed,),
        (given_up,),
        (closed,),
        (closed, given_up),
    ]


def test_no_combination_may_end_nowhere() -> None:
    one = library(pathway("one", end("closed")))
    assert may_end_in(one, "one", []) == []
