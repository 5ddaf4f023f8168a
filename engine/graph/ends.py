"""Where a walk over a pathway may end, or leave it for good."""

from __future__ import annotations

from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Handover, Outcome, Step, StepId


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
        there = library.pathways.get(step.to)
        back = {name for name, _ in step.on_return}
        outcomes = there.steps.values() if there else ()
        return there is None or any(
            isinstance(each, Outcome) and each.id not in back for each in outcomes
        )
    return any(target.step not in pathway.steps for target in targets(step))
