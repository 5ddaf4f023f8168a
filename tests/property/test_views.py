"""In any view of what is known and counted there are all walks, and with everything no others."""

from __future__ import annotations

from chamberwise.engine.model.library import Library
from chamberwise.engine.proof.closer import Closer
from chamberwise.engine.proof.ground import ground_of
from chamberwise.engine.proof.monitors import monitors
from chamberwise.engine.proof.spoken_of import tracked_fields
from chamberwise.engine.proof.view import EVERYTHING, View, own_view
from hypothesis import given
from hypothesis import strategies as st

from tests.support.every_walk import EveryWalk
from tests.support.rules import Ruled, ruled_libraries

any_ruled = ruled_libraries() | ruled_libraries(tame=False)


def closer_of(drawn: Ruled) -> Closer:
    tracked = tracked_fields(drawn.library, drawn.entry, drawn.rules)
    ground = ground_of(drawn.library, drawn.entry, tracked)
    return Closer(ground, monitors(drawn.rules), most=100_000, reduced=True)


def parts(closer: Closer, chosen: int) -> View:
    """Return a view of some findings and counts, one for each bit that is chosen."""
    program = closer.ground.program
    fields = [
        field
        for fields in (program.layout.shared, *program.layout.own.values())
        for field in fields.values()
    ]
    every = [field.every | program.tracked.get(field.every, 0) for field in fields]
    every += [counter.mask for counter in program.counters.values()]
    return sum(part for place, part in enumerate(every) if chosen >> place & 1)


def broken_by_walks(drawn: Ruled, closer: Closer, every: EveryWalk) -> set[int]:
    """Return the claims that some walk breaks, as far as every walk was walked."""
    return {
        number
        for number, claim in enumerate(closer.claims)
        for judged in [every.judged[claim.rule]]
        if (judged.bites if claim.is_trigger else judged.broken_after is not None)
    }


@given(any_ruled, st.integers(0, 2**40))
def test_a_walk_that_breaks_a_claim_breaks_it_in_every_view(drawn: Ruled, chosen: int) -> None:
    closer = closer_of(drawn)
    view = parts(closer, chosen)
    for claim in closer.claims:
        view |= own_view(closer.ground.program, drawn.entry, claim.roles)
    broken = closer.broken(view, range(len(closer.claims)))
    every = EveryWalk(drawn.library, drawn.entry, drawn.rules)
    assert broken_by_walks(drawn, closer, every) <= broken


@given(any_ruled)
def test_with_everything_looked_at_only_walks_break_claims(drawn: Ruled) -> None:
    closer = closer_of(drawn)
    broken = closer.broken(EVERYTHING, range(len(closer.claims)))
    every = EveryWalk(drawn.library, drawn.entry, drawn.rules)
    if every.complete and not _exits_go_round(drawn.library):
        assert broken == broken_by_walks(drawn, closer, every)


def _exits_go_round(library: Library) -> bool:
    """Whether a bound leads to another: round, perhaps, and then its door stays open."""
    return any(
        step.bound and pathway.steps[step.bound.after_that].bound
        for pathway in library.pathways.values()
        for step in pathway.steps.values()
    )
