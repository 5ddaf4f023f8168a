"""A row of a branch is taken more often: for one more value, or without one of its terms."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Branch
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import told, with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "widen-row"


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each branch with each row widened in each way."""
    words = pathway.words.over(shared)
    for name, step in pathway.steps.items():
        if not isinstance(step, Branch):
            continue
        for place, row in enumerate(step.rows):
            for how, when in _wider(row.when, words):
                rows = list(step.rows)
                rows[place] = replace(row, when=when)
                at = f"{name}/{told(row.when)} {how}"
                what = f"the row `{told(row.when)}` of `{name}` is taken {how}"
                edited = with_steps(pathway, replace(step, rows=tuple(rows)))
                yield mutant(KIND, at, what, edited)


def _wider(when: Condition, words: Words) -> Iterator[tuple[str, Condition]]:
    for place, (name, values) in enumerate(when.terms):
        before, after = when.terms[:place], when.terms[place + 1 :]
        for value in words.findings[name].values:
            if value.id not in values:
                term = (name, (*values, value.id))
                yield f"with {name}={value.id}", Condition((*before, term, *after))
        if before or after:
            yield f"without {name}", Condition((*before, *after))
