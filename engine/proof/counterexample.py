"""From a search that broke to a shortest walk by `advance`, and the moment at which it broke."""

from __future__ import annotations

from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import Move
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.proof.run import Run
from chamberwise.engine.proof.shortest import shortest
from chamberwise.engine.proof.trace import is_lost, trace
from chamberwise.engine.proof.verdict import Counterexample


def counterexample(library: Library, found: Run, number: int, rule: Rule) -> Counterexample:
    """Return a shortest walk that breaks a rule, which the search has to have broken."""
    machine = found.machine(number)
    way = shortest(found.states, machine, found.watching[machine], found.is_end)
    state = begin(library, found.pathway).state
    made: list[Move] = []
    for move in way:
        made.append(moves(library, state)[move])
        state = advance(library, state, made[-1])
    walked = trace(library, found.pathway, made)
    return Counterexample(found.pathway, tuple(made), is_lost(library, found.pathway, rule, walked))
