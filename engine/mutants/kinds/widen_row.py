"""A row of a branch is taken more often: for one more value, or without one of its terms."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.graph.arrows import told
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Branch
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.editing import with_steps
from chamberwise.engine.mutants.mutant import Mutant, mutant

KIND = "widen-row"
WITH = N_("the row `{row}` of `{step}` is taken with {finding}={value}")
WITHOUT = N_("the row `{row}` of `{step}` is taken without {finding}")


def mutants(pathway: Pathway, shared: Words) -> Iterator[Mutant]:
    """Yield each branch with each row widened in each way."""
    words = pathway.words.over(shared)
    for name, step in pathway.steps.items():
        if not isinstance(step, Branch):
            continue
        for place, row in enumerate(step.rows):
            for how, said, finding, value, when in _wider(row.when, words):
                rows = list(step.rows)
                rows[place] = replace(row, when=when)
                at = f"{name}/{told(row.when)} {how}"
                what = _(said).format(row=told(row.when), step=name, finding=finding, value=value)
                edited = with_steps(pathway, replace(step, rows=tuple(rows)))
                yield mutant(KIND, at, what, edited)


def _wider(when: Condition, words: Words) -> Iterator[tuple[str, str, str, str, Condition]]:
    """Yield each way to be wider: how, its text, the finding, the value, and the condition."""
    for place, (name, values) in enumerate(when.terms):
        before, after = when.terms[:place], when.terms[place + 1 :]
        for value in words.findings[name].values:
            if value.id not in values:
                wider = Condition((*before, (name, (*values, value.id)), *after))
                yield f"with {name}={value.id}", WITH, name, value.id, wider
        if before or after:
            yield f"without {name}", WITHOUT, name, "", Condition((*before, *after))
