"""Two rows of a branch lead where the other should."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from chamberwise.engine.graph.arrows import told
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Branch
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "swap-rows"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each branch with what two rows say exchanged, where they lead apart.

    Rows exclude each other, so that their order alone says nothing.
    """
    for name, step in pathway.steps.items():
        if not isinstance(step, Branch):
            continue
        for (one, first), (other, second) in combinations(enumerate(step.rows), 2):
            if first.go_to == second.go_to:
                continue
            rows = list(step.rows)
            rows[one] = replace(first, go_to=second.go_to)
            rows[other] = replace(second, go_to=first.go_to)
            at = f"{name}/{told(first.when)} <-> {told(second.when)}"
            what = _("two rows of `{name}` lead to `{first}` and `{second}`, exchanged").format(
                name=name, first=second.go_to, second=first.go_to
            )
            yield mutant(KIND, at, what, with_steps(pathway, replace(step, rows=tuple(rows))))
