"""Departures of runs by hand, on a pathway small enough to see through."""

from __future__ import annotations

from itertools import permutations, product

import pytest
from chamberwise.engine.drill.aligning.align import Departure, How, align
from chamberwise.engine.drill.entries import Ending
from chamberwise.engine.model.drill import CriticalAct
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Pattern
from chamberwise.engine.model.step import Line
from hypothesis import given
from hypothesis import strategies as st

from tests.support import rules
from tests.support.build import act, ask, bounded, changed, do, end, finding, library, pathway
from tests.support.running import ran

FILL_FIRST = rules.rule(Pattern.PRECEDENCE, rules.at(act="leave"), rules.at(act="fill"))


def small() -> Library:
    lines = (
        Line("surgeon", "Hold.", act="hold"),
        Line("assistant", "Call.", act="call"),
        Line("surgeon", "Press.", act="press"),
    )
    return library(
        pathway(
            "one",
            changed(do("hold still", "fill up"), lines=lines),
            do("fill up", "look", acts="fill leave"),
            ask("look", "vitreous", none="close", present="clear"),
            bounded(do("clear", "look", acts="cut", stale="vitreous"), 2, "close"),
            do("close", "over", acts="close"),
            end("over"),
        ),
        findings=[finding("vitreous", "none present")],
        acts=[
            act(name) for name in ("hold", "call", "press", "fill", "leave", "cut", "close", "pray")
        ],
        rules=[FILL_FIRST],
    )


def told(script: str, **more: object) -> list[tuple[str, str, str]]:
    """Return how, what, and before what, of each departure."""
    run = ran(small(), "one", script, {"vitreous": "present"}, **more)  # type: ignore[arg-type]
    return [_told(each) for each in align(small(), run).departures]


def _told(departure: Departure) -> tuple[str, str, str]:
    doing, event, then = departure.doing, departure.event, departure.then
    what = (doing.act or doing.looks_at) if doing else getattr(event and event.entry, "act", None)
    before = then.entry if then else None
    name = getattr(before, "act", None) or getattr(before, "finding", "")
    return departure.how.value, what or "", name


WHOLE = "hold, call, press, fill, leave, vitreous?, cut, vitreous=none, close"


def test_a_run_by_the_book_departs_from_nothing() -> None:
    run = ran(small(), "one", WHOLE, {"vitreous": "present"}, ending=Ending.OUTCOME)
    aligned = align(small(), run)
    assert (aligned.alignment.cost, aligned.departures) == (0, ())


@pytest.mark.parametrize("order", list(permutations(["hold", "call", "press"])))
def test_acts_of_one_step_that_no_rule_orders_may_come_in_any_order(
    order: tuple[str, ...],
) -> None:
    assert told(", ".join([*order, "fill", "leave"])) == []


def test_acts_of_one_duty_that_a_rule_orders_may_not() -> None:
    assert told("hold, call, press, leave, fill, vitreous?") == [(How.TOO_LATE, "fill", "leave")]


def test_what_is_left_out_is_placed_before_what_the_run_went_on_with() -> None:
    assert told("hold, press, fill, leave, vitreous?") == [(How.LEFT_OUT, "call", "fill")]


def test_a_drill_that_stops_has_left_out_nothing_that_was_still_to_come() -> None:
    assert told("hold, call") == []
    assert ("left out", "close", "") in told("hold, call", ending=Ending.OUTCOME)


def test_a_look_left_out_is_followed_as_this_eye_would_have_answered_it() -> None:
    assert told("hold, call, press, fill, leave, cut") == [(How.LEFT_OUT, "vitreous", "cut")]
    found = told("hold, call, press, fill, leave, close", ending=Ending.OUTCOME)
    assert [how for how, _, _ in found].count(How.LEFT_OUT) >= 1


def test_one_look_more_is_no_departure() -> None:
    assert told("vitreous?, hold, vitreous?, call, press, fill, leave, vitreous?, cut") == []


def test_what_the_pathway_has_nowhere_is_done_besides() -> None:
    assert told("hold, call, press, pray, fill, leave") == [(How.BESIDES, "pray", "fill")]


def test_what_the_pathway_would_still_have_come_to_is_too_early() -> None:
    assert told("hold, call, press, close, fill, leave") == [(How.TOO_EARLY, "close", "")]


def test_a_part_done_before_its_turn_leaves_the_rest_of_the_run_in_its_place() -> None:
    assert told("hold, fill, call, press, leave, vitreous?, cut") == [
        (How.TOO_EARLY, "fill", "leave")
    ]


def test_the_same_again_is_told_as_that() -> None:
    assert told("hold, call, press, fill, leave, vitreous?, fill, cut") == [
        (How.AGAIN, "fill", "cut")
    ]


def test_an_act_far_out_of_its_place_is_one_departure() -> None:
    assert told("leave, hold, call, press, fill, vitreous?, cut") == [
        (How.TOO_EARLY, "leave", "vitreous")
    ]


def test_where_it_belongs_is_told_by_what_stands_about_that_place() -> None:
    run = ran(small(), "one", "leave, hold, call, press, fill, vitreous?", {"vitreous": "none"})
    (departure,) = align(small(), run).departures
    assert departure.event is run.events[0]
    assert (departure.after, departure.then) == (run.events[4], run.events[5])


def test_leaving_out_a_critical_act_costs_more() -> None:
    critical = (CriticalAct("hold"),)
    plain = ran(small(), "one", "call, press, fill")
    weighed = ran(small(), "one", "call, press, fill", critical=critical)
    assert align(small(), weighed).alignment.cost > align(small(), plain).alignment.cost


ACTS = ["hold", "call", "press", "fill", "leave", "cut", "close"]


@given(st.lists(st.sampled_from(ACTS), min_size=1, max_size=6))
def test_the_cost_is_that_of_the_best_of_all_walks(script: list[str]) -> None:
    """Against every walk of this eye written out, each compared by the plainest recursion."""
    run = ran(small(), "one", ", ".join(script), {"vitreous": "none"}, ending=Ending.OUTCOME)
    walks = [
        [*first, "fill", "leave", "?", "close"] for first in permutations(["hold", "call", "press"])
    ]
    best = min(_compared(tuple(script), tuple(walk)) for walk in walks)
    assert align(small(), run).alignment.cost == best


def _compared(run: tuple[str, ...], walk: tuple[str, ...]) -> int:
    table = {(0, 0): 0}
    for done, gone in product(range(len(run) + 1), range(len(walk) + 1)):
        ways = []
        if done:
            ways.append(table[done - 1, gone] + 8)
        if gone:
            ways.append(table[done, gone - 1] + (1 if walk[gone - 1] in {"?", *run} else 2))
        if done and gone and run[done - 1] == walk[gone - 1]:
            ways.append(table[done - 1, gone - 1])
        table[done, gone] = min(ways, default=0)
    return table[len(run), len(walk)]
