"""Which acts had their turn before a drill ended: what came later was never reached, not missed."""

from __future__ import annotations

from chamberwise.engine.drill.entries import Did, Ended, Ending
from chamberwise.engine.drill.following import acts_of
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.standing import Standing, step_of
from chamberwise.engine.model.step import Action
from chamberwise.engine.model.words import ActId

WHOLE = frozenset({Ending.OUTCOME, Ending.STOP_RULE})
"""Endings with which everything that was called for has had its turn."""


def came_to(scenario: Scenario, standing: Standing, ended: Ended | None) -> frozenset[ActId] | None:
    """Return the acts of the steps that the pathway came to; None where all had their turn.

    Of the step on which it stood when somebody ended the drill by hand, those before the last line
    that was done: of the others nobody knows whether they would have come.
    """
    if ended is not None and ended.how in WHOLE:
        return None
    here = standing.state.place
    steps = [scenario.library.step(place) for place in standing.visited if place != here]
    passed = {act for step in steps if isinstance(step, Action) for act in acts_of(step)}
    last = step_of(scenario, standing)
    if not isinstance(last, Action):
        return frozenset(passed)
    acts = acts_of(last)
    if ended is None or ended.how is not Ending.TIME_OUT:
        done = {each.entry.act for each in standing.events if isinstance(each.entry, Did)}
        reached = [number for number, act in enumerate(acts, start=1) if act in done]
        acts = acts[: max(reached, default=0)]
    return frozenset(passed) | frozenset(acts)
