"""How few drills there can be, against every set of walks of small random pathways."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from chamberwise.engine.drill.coverage.plan import plan
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import Answered, State
from chamberwise.engine.model.library import Library
from hypothesis import given, settings

from tests.support.strategies import libraries

MOST_WALKS = 300
LONGEST = 25


def least_cover(walks: Sequence[frozenset[object]], wanted: frozenset[object]) -> int:
    """Return the fewest walks that hold everything wanted, by trying every set of them."""
    kept = [each & wanted for each in set(walks)]
    kept = [each for each in set(kept) if not any(each < other for other in kept)]
    for many in range(len(kept) + 1):
        if any(frozenset().union(*some) >= wanted for some in combinations(kept, many)):
            return many
    raise AssertionError("something wanted lies on no walk")


def answers_of_walks(of: Library) -> list[frozenset[object]] | None:
    """Return the answers of every walk to its end; None where they are too many to try."""
    found: list[frozenset[object]] = []
    waiting: list[tuple[State, frozenset[object], int]] = [(begin(of, "p0").state, frozenset(), 0)]
    while waiting:
        state, given_so_far, long = waiting.pop()
        offered = moves(of, state)
        if not offered:
            found.append(given_so_far)
        if len(found) + len(waiting) > MOST_WALKS or long > LONGEST:
            return None
        for move in offered:
            more = {(state.place, move.answer)} if isinstance(move, Answered) else set()
            waiting.append((advance(of, state, move), given_so_far | more, long + 1))
    return found


@settings(max_examples=60)
@given(libraries())
def test_no_plan_claims_more_than_every_set_of_walks_allows(of: Library) -> None:
    """What is told as impossible is, and a plan as short as that is a shortest one."""
    walks = answers_of_walks(of)
    if walks is None:
        return
    found = plan(of, "p0")
    wanted = frozenset[object](answer for drill in found.drills for answer in drill.answers)
    kept = {each & wanted for each in walks}
    if len([each for each in kept if not any(each < other for other in kept)]) > 14:
        return
    fewest = least_cover(walks, wanted)
    assert found.at_least <= fewest
    rules_only = sum(not drill.first_answers for drill in found.drills)
    assert fewest <= len(found.drills) - rules_only or not wanted
