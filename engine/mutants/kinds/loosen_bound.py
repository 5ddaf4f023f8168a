"""The bound of a loop is higher, or gone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "loosen-bound"
RAISED_BY = (1, 10)


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each bounded step with its bound raised by one and by ten, and without it."""
    for name, step in pathway.steps.items():
        if step.bound is None:
            continue
        for more in RAISED_BY:
            raised = replace(step.bound, at_most=step.bound.at_most + more)
            what = _("`{name}` may be entered {raised} times instead of {times}").format(
                name=name, raised=raised.at_most, times=step.bound.at_most
            )
            edited = with_steps(pathway, replace(step, bound=raised))
            yield mutant(KIND, f"{name}/{more} more", what, edited)
        free = with_steps(pathway, replace(step, bound=None))
        yield mutant(
            KIND, f"{name}/none", _("`{name}` may be entered without end").format(name=name), free
        )
