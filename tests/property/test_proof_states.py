"""The proof's states are those of `advance`: the same moves, in the same order, to one end."""

from __future__ import annotations

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Outcome
from chamberwise.engine.proof.shots import Shots
from chamberwise.engine.proof.states import States
from hypothesis import given

from tests.support.strategies import libraries

any_library = libraries() | libraries(tame=False)
MOST = 400


def states_of(library: Library) -> States:
    """Return the states of the first pathway, watched by nothing."""
    program = compiled(library, "p0")
    shots = Shots((), program, "p0")
    return States(program, shots, [shots.at(node) for node in program.nodes])


def edges(states: States, number: int) -> list[int]:
    """Return where the moves of a state lead, in order."""
    states.open(number)
    begins = states.begin[number]
    return list(states.targets[begins : begins + states.count[number]])


@given(any_library)
def test_every_state_has_the_moves_of_advance(library: Library) -> None:
    states = states_of(library)
    waiting: list[tuple[State, int]] = [(begin(library, "p0").state, states.first())]
    met = set(waiting)
    for state, number in waiting:
        onward, legal = edges(states, number), moves(library, state)
        assert len(onward) == len(legal)
        is_outcome = isinstance(library.step(state.place), Outcome)
        assert (number in states.ends) == (is_outcome and not legal)
        assert (number in states.stuck) == (not is_outcome and not legal)
        for move, target in zip(legal, onward, strict=True):
            pair = advance(library, state, move), target
            if pair not in met and len(met) < MOST:
                met.add(pair)
                waiting.append(pair)
