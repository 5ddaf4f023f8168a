"""What a team may well be saying now: acts and looks of the step open and of those beside it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.standing import Standing, step_of
from chamberwise.engine.drill.wording.phrasebook import Target
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Branch, PathwayId, Question, Step, StepId

STEPS_ON = 2
"""How many steps on, branches not counted, still lie beside the one that is open."""


def said_around(scenario: Scenario, standing: Standing) -> frozenset[Target]:
    """Return the acts and looks of the step that is open and of the next few."""
    step = step_of(scenario, standing)
    return _around(scenario, standing.state.place.pathway, step.id)


@lru_cache(maxsize=512)
def _around(scenario: Scenario, pathway: PathwayId, start: StepId) -> frozenset[Target]:
    steps = scenario.library.pathways[pathway].steps
    found: set[Target] = set()
    seen: set[StepId] = set()
    open_now = {start}
    for _ in range(STEPS_ON + 1):
        beside: set[StepId] = set()
        for name in open_now - seen:
            found.update(_targets(steps[name]))
            beside.update(_next(scenario.library, pathway, name))
        seen |= open_now
        open_now = beside
    return frozenset(found)


def _targets(step: Step) -> Iterator[Target]:
    if isinstance(step, Question):
        yield Target(finding=step.ask)
    elif isinstance(step, Action):
        yield from (Target(act=line.act) for line in step.lines if line.act)


def _next(library: Library, pathway: PathwayId, name: StepId) -> Iterator[StepId]:
    """Yield the steps straight after one, branches passed over."""
    step = library.pathways[pathway].steps[name]
    if isinstance(step, Action):
        after = [step.go_to]
    elif isinstance(step, Question):
        after = [each.go_to for each in step.answers]
    elif isinstance(step, Branch):
        after = [row.go_to for row in step.rows]
        after += [each for each in (step.otherwise, step.not_known) if each]
    else:
        return
    for each in after:
        if isinstance(library.pathways[pathway].steps.get(each), Branch):
            yield from _next(library, pathway, each)
        elif each in library.pathways[pathway].steps:
            yield each
