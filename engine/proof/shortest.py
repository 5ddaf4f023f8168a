"""A shortest walk on which one machine is lost, or the walk ends without what was asked for."""

from __future__ import annotations

from collections.abc import Callable

from chamberwise.engine.exploration.wanted import go_on_if_wanted
from chamberwise.engine.model.library import Place
from chamberwise.engine.proof.monitors import Monitor
from chamberwise.engine.proof.shots import Shot
from chamberwise.engine.proof.states import States

Pair = tuple[int, int]
"""A state and the state of the machine there."""


def shortest(
    states: States, number: int, monitor: Monitor, is_end: Callable[[Place], bool]
) -> list[int]:
    """Return the moves of a shortest walk that breaks a rule, as numbers among those legal.

    There has to be one. Document order decides between walks of equal length.
    """
    front: list[Pair] = [(states.first(), 0)]
    came_by: dict[Pair, tuple[Pair, int] | None] = dict.fromkeys(front)
    while front:
        go_on_if_wanted()
        for pair in front:
            if _ends_badly(states, number, monitor, pair, is_end):
                return _way(came_by, pair)
        onward: list[Pair] = []
        for pair in front:
            state, at = pair
            states.open(state)
            begin = states.begin[state]
            for move in range(states.count[state]):
                after = _after(states, number, at, states.shot_of[begin + move])
                there = states.targets[begin + move], after
                if there not in came_by:
                    came_by[there] = pair, move
                    if after == monitor.machine.lost:
                        return _way(came_by, there)
                    onward.append(there)
        front = onward
    raise AssertionError("no walk breaks the rule")


def _ends_badly(
    states: States, number: int, monitor: Monitor, pair: Pair, is_end: Callable[[Place], bool]
) -> bool:
    state, at = pair
    if state not in states.ends:
        return False
    after = _after(states, number, at, states.ends[state])
    return after == monitor.machine.lost or (
        after not in monitor.machine.good and is_end(states.place(state))
    )


def _after(states: States, number: int, at: int, shot: Shot) -> int:
    if number in states.shots.loses[shot]:
        return 1
    return next((after[at] for who, after in states.shots.changes[shot] if who == number), at)


def _way(came_by: dict[Pair, tuple[Pair, int] | None], pair: Pair) -> list[int]:
    moves = []
    while (before := came_by[pair]) is not None:
        pair, move = before
        moves.append(move)
    return moves[::-1]
