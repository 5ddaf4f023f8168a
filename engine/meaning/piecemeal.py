"""The same meaning taken bit by bit: single acts and looks, in whatever order somebody does them.

An act tells and takes what its effects say; a look tells one finding; an action is over once what
it asks for was done. Where the pathway goes from there, `advance` alone decides.
"""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.meaning.advance import Passage, Silent, enter, settle
from chamberwise.engine.meaning.effects import Knowledge, after_act, after_its_acts
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action
from chamberwise.engine.model.words import ActId, FindingId, ValueId


def acted(library: Library, state: State, act: ActId) -> Passage:
    """Return the state after one act, in place or out of it."""
    pathway = state.place.pathway
    known = after_act(
        act, (state.possible, state.last_seen), library.words(pathway), layout_of(library), pathway
    )
    return _knowing(library, state, known)


def seen(library: Library, state: State, finding: FindingId, value: ValueId) -> Passage:
    """Return the state once somebody has seen what a finding is, asked or unasked."""
    field = layout_of(library).field(state.place.pathway, finding)
    possible = state.possible & ~field.every | field.bits[value]
    return _knowing(library, state, (possible, state.last_seen & ~field.every))


def completed(library: Library, state: State) -> Passage:
    """Return the state once the action stood on is over, its acts having been followed one by one.

    Raises `ValueError` where the state does not stand on an action.
    """
    step = library.step(state.place)
    if not isinstance(step, Action):
        raise ValueError(f"{state.place} is no action")
    pathway = state.place.pathway
    possible, last_seen = after_its_acts(
        step, (state.possible, state.last_seen), layout_of(library), pathway
    )
    silent: list[Silent] = []
    state = replace(state, possible=possible, last_seen=last_seen)
    return settle(library, enter(library, state, step.go_to, silent), silent)


def _knowing(library: Library, state: State, known: Knowledge) -> Passage:
    possible, last_seen = known
    return settle(library, replace(state, possible=possible, last_seen=last_seen), [])
