"""Where a drill stands: what is true, what the team knows, and where the pathway is.

Every change returns a new standing. The pathway's place is what `advance` makes of the acts and
looks so far; the truth changes only as the files declare.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from chamberwise.engine.drill.entries import Milliseconds
from chamberwise.engine.drill.run import Consequence, Event, Truth
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.meaning.advance import begin
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Step
from chamberwise.engine.model.words import ActId, FindingId


@dataclass(frozen=True, slots=True)
class Standing:
    """A drill at one moment. `state` is the pathway's place with what the team knows."""

    truth: Truth
    state: State
    done: tuple[ActId, ...] = ()
    """Every act in order, those of a beginning that was done rightly among them."""
    kept: Mapping[ActId, int] = field(default_factory=Counter)
    """Acts that the pathway has not yet come to, and how often each was done."""
    cannot_tell: frozenset[FindingId] = frozenset()
    """What was looked for and could not be told, until the pathway asks for it."""
    moments: tuple[Moment, ...] = ()
    visited: tuple[Place, ...] = ()
    events: tuple[Event, ...] = ()
    consequences: tuple[Consequence, ...] = ()
    injected: tuple[str, ...] = ()
    replied: tuple[tuple[str, ActId, Milliseconds], ...] = ()
    """Which injects were answered, by what, when."""
    cues: tuple[str, ...] = ()
    """What could be perceived of the last change."""


def step_of(scenario: Scenario, standing: Standing) -> Step:
    """Return the step that the pathway stands on."""
    return scenario.library.step(standing.state.place)


def first_standing(scenario: Scenario) -> Standing:
    """Return the standing before anything was done; what is known at first is not yet told."""
    state = begin(scenario.library, scenario.pathway).state
    return Standing(scenario.truth, state, visited=(state.place,))


def has_been(scenario: Scenario, standing: Standing, steps: Iterable[str]) -> bool:
    """Whether the pathway came to one of some steps of its own."""
    wanted = set(steps)
    return any(
        place.pathway == scenario.pathway and place.step in wanted for place in standing.visited
    )


def was_done(standing: Standing, acts: Iterable[ActId], since: Iterable[ActId]) -> bool:
    """Whether one of some acts was done after the last of others."""
    wanted, ends = set(acts), set(since)
    for act in reversed(standing.done):
        if act in wanted:
            return True
        if act in ends:
            return False
    return False


def knows(scenario: Scenario, standing: Standing, finding: FindingId) -> bool:
    """Whether the team knows the one value of a finding, and freshly."""
    known = layout_of(scenario.library).field(standing.state.place.pathway, finding)
    return (standing.state.possible & known.every).bit_count() == 1
