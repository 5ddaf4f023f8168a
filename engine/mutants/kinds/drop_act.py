"""A line loses its act: the words stay, and no rule sees them any more."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.kinds.lines import lines_with_act, with_lines
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "drop-act"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway with the act of each line gone, done or owed."""
    for step, place, act in lines_with_act(pathway):
        lines = [*step.lines]
        lines[place] = replace(lines[place], act=None)
        what = _("a line of `{step}` no longer says that it is `{act}`").format(
            step=step.name, act=act
        )
        yield mutant(KIND, f"{step.name}/{act}", what, with_lines(pathway, step, lines))
