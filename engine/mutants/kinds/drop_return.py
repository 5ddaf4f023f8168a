"""One way back from another pathway is left out: the walk ends over there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Handover
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "drop-return"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each handover without each of its ways back."""
    for name, step in pathway.steps.items():
        if isinstance(step, Handover):
            for outcome, _to in step.on_return:
                back = tuple(each for each in step.on_return if each[0] != outcome)
                what = _("`{name}` does not come back from `{outcome}` of `{pathway}`").format(
                    name=name, outcome=outcome, pathway=step.to
                )
                edited = with_steps(pathway, replace(step, on_return=back))
                yield mutant(KIND, f"{name}/{outcome}", what, edited)
