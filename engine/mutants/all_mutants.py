"""Every mutant of a pathway, in the order in which kinds and steps are written down."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Words
from chamberwise.engine.mutants.kinds import (
    cannot_tell,
    cautions,
    drop_act,
    drop_effect,
    drop_handover,
    drop_line,
    drop_return,
    drop_step,
    loosen_bound,
    move_value,
    retarget,
    swap_lines,
    swap_rows,
    swap_steps,
    widen_row,
)
from chamberwise.engine.mutants.mutant import Mutant

Kind = Callable[[Pathway, Words], Iterator[Mutant]]

KINDS: tuple[Kind, ...] = (
    drop_step.mutants,
    drop_handover.mutants,
    cannot_tell.mutants,
    swap_rows.mutants,
    retarget.mutants,
    move_value.mutants,
    widen_row.mutants,
    swap_steps.mutants,
    swap_lines.mutants,
    drop_act.mutants,
    drop_line.mutants,
    drop_effect.mutants,
    drop_return.mutants,
    loosen_bound.mutants,
    cautions.dropped,
    cautions.weakened,
)
"""Where two kinds make the same edit, the first has it."""


def mutants(library: Library, pathway: PathwayId) -> Iterator[Mutant]:
    """Yield every mutant once; what an edit leaves as it was is no mutant."""
    original = library.pathways[pathway]
    met: set[Hashable] = {_difference(original, library.shared, original)}
    for kind in KINDS:
        for made in kind(original, library.shared):
            difference = _difference(original, library.shared, made.edited)
            if difference not in met:
                met.add(difference)
                yield made


def _difference(original: Pathway, shared: Words, edited: Pathway | Words) -> Hashable:
    """Return what an edit changed, equal for equal edits."""
    if isinstance(edited, Words):
        return _acts_changed(shared, edited)
    steps = {**dict.fromkeys(original.steps), **edited.steps}
    changed = frozenset(
        (name, step)
        for name, step in steps.items()
        if original.steps[name] is not step and original.steps[name] != step
    )
    return edited.start, changed, _acts_changed(original.words, edited.words)


def _acts_changed(before: Words, after: Words) -> Hashable:
    return frozenset(act for name, act in after.acts.items() if before.acts[name] != act)
