"""Two actions, one right after the other, change places."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.graph.arrows import rewired
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "swap-steps"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway with each pair of neighbouring actions the other way round."""
    for name, step in pathway.steps.items():
        after = pathway.steps.get(step.go_to) if isinstance(step, Action) else None
        if isinstance(step, Action) and isinstance(after, Action) and after.go_to != name:
            what = _("`{after}` comes before `{name}`").format(after=after.id, name=name)
            yield mutant(KIND, f"{name} <-> {after.id}", what, _swapped(pathway, step, after))


def _swapped(pathway: Pathway, first: Action, second: Action) -> Pathway:
    """Return the pathway in which what led to the first leads to the second, and on to the first.

    What led to the second from elsewhere still does.
    """
    steps = {
        name: rewired(step, lambda _label, to: second.id if to == first.id else to)
        for name, step in pathway.steps.items()
    }
    after = second.go_to if second.go_to != second.id else first.id
    steps[first.id] = replace(first, go_to=after)
    steps[second.id] = replace(second, go_to=first.id)
    start = second.id if pathway.start == first.id else pathway.start
    return replace(pathway, steps=steps, start=start)
