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
    begins, count, targets, shot_of = states.begin, states.count, states.targets, states.shot_of
    afters, lost = _Afters(states, number, monitor), monitor.machine.lost
    front: list[Pair] = [(states.first(), 0)]
    came_by: dict[Pair, tuple[Pair, int] | None] = dict.fromkeys(front)
    while front:
        go_on_if_wanted()
        for pair in front:
            if _ends_badly(states, afters, monitor, pair, is_end):
                return _way(came_by, pair)
        states.open_all([state for state, _ in front])
        onward: list[Pair] = []
        for pair in front:
            state, at = pair
            begin = begins[state]
            for edge in range(begin, begin + count[state]):
                after = afters[shot_of[edge]][at]
                there = targets[edge], after
                if there not in came_by:
                    came_by[there] = pair, edge - begin
                    if after == lost:
                        return _way(came_by, there)
                    onward.append(there)
        front = onward
    raise AssertionError("no walk breaks the rule")


class _Afters(dict[Shot, tuple[int, ...]]):
    """By shot, the state of one machine afterwards for each of its states."""

    def __init__(self, states: States, number: int, monitor: Monitor) -> None:
        super().__init__()
        self._shots, self._number = states.shots, number
        self._same = tuple(range(len(monitor.machine.after)))

    def __missing__(self, shot: Shot) -> tuple[int, ...]:
        number, same = self._number, self._same
        if number in self._shots.loses[shot]:
            found = tuple([1 for _ in same])
        else:
            changes = self._shots.changes[shot]
            found = next((after for who, after in changes if who == number), same)
        self[shot] = found
        return found


def _ends_badly(
    states: States, afters: _Afters, monitor: Monitor, pair: Pair, is_end: Callable[[Place], bool]
) -> bool:
    state, at = pair
    if state not in states.ends:
        return False
    after = afters[states.ends[state]][at]
    return after == monitor.machine.lost or (
        after not in monitor.machine.good and is_end(states.place(state))
    )


def _way(came_by: dict[Pair, tuple[Pair, int] | None], pair: Pair) -> list[int]:
    moves = []
    while (before := came_by[pair]) is not None:
        pair, move = before
        moves.append(move)
    return moves[::-1]
