"""What is called the same looks the same on every walk by `advance`, and what is not differs."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.graph.met import view
from chamberwise.engine.graph.targets import all_targets
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.mutants.mutant import Mutant
from chamberwise.engine.mutants.sameness import is_same, walked
from hypothesis import given
from hypothesis import strategies as st

from tests.support.build import ask, bounded, do, end, finding, library, pathway
from tests.support.strategies import libraries

MOST = 600


def differ(left: Library, right: Library) -> bool | None:
    """Walk both side by side; `None` where there are too many walks to tell."""
    waiting = [(begin(left, "p0").state, begin(right, "p0").state)]
    met = set(waiting)
    while waiting:
        one, other = waiting.pop()
        if shown(left, one) != shown(right, other):
            return True
        for move in moves(left, one):
            pair = advance(left, one, move), advance(right, other, move)
            if pair not in met:
                met.add(pair)
                waiting.append(pair)
        if len(met) > MOST:
            return None
    return False


def shown(library: Library, state: State) -> object:
    return view(library.step(state.place)), tuple(moves(library, state))


def has_bounds(library: Library) -> bool:
    return any(step.bound for each in library.pathways.values() for step in each.steps.values())


def is_walkable(mutant: Mutant, library: Library) -> bool:
    """Whether every arrow leads somewhere, which is all that `advance` needs."""
    edited = mutant.within(library).pathways["p0"]
    arrows = all(target.step in edited.steps for _, target in all_targets(edited))
    return arrows and edited.start in edited.steps


@given(libraries(), st.integers(0, 10_000))
def test_the_same_is_what_no_walk_tells_apart(library: Library, number: int) -> None:
    made = [each for each in mutants(library, "p0") if is_walkable(each, library)]
    for mutant in made[number % 5 :: 5]:
        edited = mutant.within(library)
        same = is_same(walked(library, "p0"), walked(edited, "p0"))
        told = differ(library, edited)
        if same:
            assert not told, mutant.id
        elif told is not None and not has_bounds(library):
            assert told, mutant.id


def test_a_bound_that_no_way_leads_back_to_turns_nobody_away() -> None:
    once = library(
        pathway(
            "p0", bounded(do("try", "done", acts="fill"), 1, "stopped"), end("done"), end("stopped")
        )
    )
    steps = once.pathways["p0"].steps
    often = bounded(do("try", "done", acts="fill"), 9, "done")
    freely = Library(
        once.shared, {"p0": replace(once.pathways["p0"], steps={**steps, "try": often})}
    )
    assert is_same(walked(once, "p0"), walked(freely, "p0"))


def test_what_a_step_makes_known_shows_only_in_what_is_asked_later() -> None:
    def with_effect(**known: str) -> Library:
        work = do("work", "look", acts="fill", known=known)
        look = ask("look", "gel", unclear="done", none="done", back="done")
        both = [finding("gel", "none back"), finding("depth", "deep flat")]
        return library(pathway("p0", work, look, end("done")), findings=both)

    plain = walked(with_effect(), "p0")
    assert is_same(plain, walked(with_effect(depth="deep"), "p0"))
    assert not is_same(plain, walked(with_effect(gel="none"), "p0"))
