"""Blaming a sheet: what it brings about below it is told at its own line."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cache

from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Note, Pointer, Problem
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.local.causes import Kept, causes, with_only
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.local_sheet import Operation

MOST = 12
"""Each cause is looked for by checking again without some of the sheet."""
NEVER = "never-comes-up"
UNUSED = "unused-acceptance"

_Key = tuple[str, Pointer, str]


@dataclass(slots=True)
class Below:
    """A library without the sheet, and what is found there, which is looked for once."""

    base: Loaded
    shown: tuple[str, ...]
    """The files whose problems are told."""
    today: date
    _keys: frozenset[_Key] | None = None

    @property
    def keys(self) -> frozenset[_Key]:
        """Every problem that is there without the sheet."""
        if self._keys is None:
            self._keys = self.found(self.base)
        return self._keys

    def found(self, loaded: Loaded) -> frozenset[_Key]:
        """Return every problem of those files in a library."""
        return frozenset(map(_key, check_files(loaded, self.shown, self.today)))


def below_again(known: Below | None, base: Loaded, shown: tuple[str, ...], today: date) -> Below:
    """Return what is known of a library, where it is of the same library, files and day."""
    if known is None or known.base is not base or (known.shown, known.today) != (shown, today):
        return Below(base, shown, today)
    return known


def blamed(problems: Sequence[Problem], sheet: File, below: Below) -> list[Problem]:
    """Return problems at the line of the sheet that brought them about, where it did.

    Two kinds are no fault of either file and are left out: an acceptance below that accepts
    nothing any more, and a step that never comes up because of what the unit chose.
    """

    @cache
    def found(kept: Kept) -> frozenset[_Key]:
        if not kept:
            return below.keys
        loaded = with_only(below.base, sheet, kept)
        return below.found(loaded) if loaded else frozenset()

    told, looked_for = [], 0
    for problem in problems:
        is_below = problem.file != sheet.shown_as
        if is_below and _is_chosen_away(problem, sheet, found):
            continue
        is_new = is_below and _key(problem) not in found(())
        if is_new and problem.code == UNUSED:
            continue
        if is_new and looked_for < MOST and sheet.sheet is not None:
            looked_for += 1
            by = causes(sheet.sheet, _key(problem), found)
            problem = _at_the_sheet(problem, sheet, by) if by else problem
        told.append(problem)
    return told


def _is_chosen_away(
    problem: Problem, sheet: File, found: Callable[[Kept], frozenset[_Key]]
) -> bool:
    """Whether something never comes up because of the choices made, and of nothing else."""
    if problem.code != NEVER or sheet.sheet is None:
        return False
    choices = tuple(each.at for each in sheet.sheet.operations if each.place[0] == "choices")
    return _key(problem) in found(choices)


def _at_the_sheet(problem: Problem, sheet: File, by: Sequence[Operation]) -> Problem:
    """Return a problem at the first operation that brings it about; the rest are notes."""
    at, tree = by[0].said, sheet.tree
    notes = [Note(_("it shows here"), problem.file, problem.span)]
    notes += [
        Note(_("brought about together with this"), sheet.shown_as, tree.span(each.said))
        for each in by[1:]
    ]
    return replace(
        problem,
        file=sheet.shown_as,
        pointer=at,
        span=tree.span(at),
        notes=(*notes, *problem.notes),
    )


def _key(problem: Problem) -> _Key:
    return problem.code, problem.pointer, problem.message
