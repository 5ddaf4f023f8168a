"""One arrow leads to another step that a hurried author might have written.

Plausible are: where the other arrows of the same step lead; one step too far, to what follows the
right step; and for an outcome, every other outcome. Never the step itself, and not a step that only
stands near on the page: an arrow is written by name.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.graph.arrows import arrows, onward, turned
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Outcome, Step, StepId
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "retarget"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway with each arrow turned to each plausible other step."""
    for name, step in pathway.steps.items():
        for label, right in arrows(step):
            if right not in pathway.steps:
                continue
            for wrong in plausible(pathway, step, right):
                at = f"{name}/{label} -> {wrong}"
                what = _("`{label}` of `{name}` leads to `{wrong}` instead of `{right}`").format(
                    label=label, name=name, wrong=wrong, right=right
                )
                yield mutant(KIND, at, what, with_steps(pathway, turned(step, label, wrong)))


def plausible(pathway: Pathway, step: Step, right: StepId) -> tuple[StepId, ...]:
    """Return the steps that an arrow might wrongly lead to, each once."""
    found = [to for _label, to in arrows(step)]
    found += onward(pathway.steps[right])
    if isinstance(pathway.steps[right], Outcome):
        found += [each.id for each in pathway.steps.values() if isinstance(each, Outcome)]
    wrong = (right, step.id)
    return tuple(each for each in dict.fromkeys(found) if each not in wrong)
