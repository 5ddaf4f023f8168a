"""A handover is left out: the walk goes on as if over there had been dealt with."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.graph.arrows import onward
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Handover, Outcome
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import with_steps, without_step
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "drop-handover"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway with each handover led to each step it returns to.

    In place of one that does not come back the walk ends, and nothing is owed.
    """
    for name, step in pathway.steps.items():
        if not isinstance(step, Handover):
            continue
        for target in onward(step):
            what = _("`{name}` is left out; what led to it leads to `{target}`").format(
                name=name, target=target
            )
            yield mutant(KIND, f"{name} -> {target}", what, without_step(pathway, name, target))
        if not step.on_return:
            end = Outcome(id=name, phase=step.phase, title=step.says, plan=step.plan)
            what = _("the walk ends at `{name}` instead of going on in `{pathway}`").format(
                name=name, pathway=step.to
            )
            yield mutant(KIND, f"{name}/ends there", what, with_steps(pathway, end))
