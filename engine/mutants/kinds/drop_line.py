"""A line with an act is left out, done or owed."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.kinds.lines import lines_with_act, with_lines
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "drop-line"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway without each line; an action's only line goes with the whole step."""
    for step, place, act in lines_with_act(pathway):
        lines = [*step.lines[:place], *step.lines[place + 1 :]]
        if not lines and isinstance(pathway.steps[step.name], Action):
            continue
        what = _("`{step}` is without its line `{act}`").format(step=step.name, act=act)
        yield mutant(KIND, f"{step.name}/{act}", what, with_lines(pathway, step, lines))
