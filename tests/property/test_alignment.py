"""Every walk of a pathway, taken as a run, lies against it without a difference."""

from __future__ import annotations

from chamberwise.engine.drill.aligning.align import align
from chamberwise.engine.drill.entries import Did, Ending, Looked
from chamberwise.engine.drill.run import Event, Run
from chamberwise.engine.meaning.moments import moments_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Question
from hypothesis import given
from hypothesis import strategies as st

from tests.conformance.driver import PATHWAYS
from tests.conformance.driver import library as shipped
from tests.support.running import ran
from tests.support.strategies import libraries
from tests.support.walking import Leg, random_walk

PICKS = st.lists(st.integers(0, 59), max_size=40)


def as_run(library: Library, pathway: str, legs: list[Leg]) -> Run:
    """Return the walk as a run in which each look showed what was answered."""
    events: list[Event] = []
    for leg in legs:
        step = library.step(leg.before.place)
        for moment in moments_of(library, leg.before, leg.move):
            entry: Did | Looked
            if moment.asks is not None and isinstance(step, Question):
                answer = next(each for each in step.answers if each.id == moment.answer)
                saw = answer.means[0] if answer.means else None
                entry = Looked(1000 * len(events), moment.asks, saw, "surgeon")
            elif moment.act is not None:
                entry = Did(1000 * len(events), moment.act, moment.by or "")
            else:
                continue
            events.append(Event(entry, len(events), {}, moment.possible, moment.last_seen))
    bare = ran(library, pathway, "", ending=Ending.STOP_RULE)
    return Run(
        bare.journal, bare.began, bare.entries, tuple(events), (), (), (), 0, None, bare.ended
    )


@given(libraries(), PICKS)
def test_any_walk_of_any_library_costs_nothing(library: Library, picks: list[int]) -> None:
    run = as_run(library, "p0", list(random_walk(library, "p0", picks)))
    aligned = align(library, run)
    assert (aligned.alignment.cost, aligned.departures) == (0, ())


@given(st.sampled_from(PATHWAYS), PICKS)
def test_any_walk_of_the_pathways_distributed_costs_nothing(pathway: str, picks: list[int]) -> None:
    run = as_run(shipped(), pathway, list(random_walk(shipped(), pathway, picks)))
    assert align(shipped(), run).alignment.cost == 0
