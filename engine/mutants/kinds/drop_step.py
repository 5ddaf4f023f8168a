"""A step is left out; a question or branch once for each step it can lead to."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.graph.arrows import onward
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Branch, Question
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import without_step
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "drop-step"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield the pathway without each action, question and branch."""
    for name, step in pathway.steps.items():
        if not isinstance(step, Action | Question | Branch):
            continue
        targets = [each for each in onward(step) if each != name]
        for target in targets:
            at = name if len(targets) == 1 else f"{name} -> {target}"
            what = _("`{name}` is left out; what led to it leads to `{target}`").format(
                name=name, target=target
            )
            yield mutant(KIND, at, what, without_step(pathway, name, target))
