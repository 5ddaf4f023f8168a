"""Where a walk over a pathway may end, or leave it for good."""

from __future__ import annotations

from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Handover, Outcome, PathwayId, Step, StepId


def ends(library: Library, pathway: Pathway) -> list[StepId]:
    """Return the outcomes, and the handovers that some outcome over there does not return from.

    A step with an arrow to nowhere counts as well: another check reports it, and one fault is
    told once.
    """
    return [name for name, step in pathway.steps.items() if _may_end(library, pathway, step)]


def _may_end(library: Library, pathway: Pathway, step: Step) -> bool:
    if isinstance(step, Outcome):
        return True
    if isinstance(step, Handover):
        return _may_end_over_there(library, step, {pathway.id})
    return any(target.step not in pathway.steps for target in targets(step))


def _may_end_over_there(library: Library, handover: Handover, met: set[PathwayId]) -> bool:
    """Whether a walk may end over there, or further on, where it does not come back from."""
    there = library.pathways.get(handover.to)
    if there is None:
        return True
    back = {name for name, _ in handover.on_return}
    steps = there.steps.values()
    if any(isinstance(step, Outcome) and step.id not in back for step in steps):
        return True
    if there.id in met:
        return False
    met.add(there.id)
    onward = [step for step in steps if isinstance(step, Handover)]
    return any(_may_end_over_there(library, step, met) for step in onward)
