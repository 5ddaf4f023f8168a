"""Cases whose plan or outcome is another now."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from chamberwise.engine.cases.case import Case, Combination
from chamberwise.engine.cases.table import cases
from chamberwise.engine.comparing.renames import Renames
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import PathwayId


@dataclass(frozen=True, slots=True)
class CaseChange:
    """Combinations that led to one plan and outcome before, and all lead to another now.

    `was` or `now` is missing where the combination is not in that table.
    """

    combinations: tuple[Combination, ...]
    was: Case | None
    now: Case | None


def case_changes(
    old: tuple[Library, PathwayId],
    new: tuple[Library, PathwayId],
    renamed: Mapping[PathwayId, Renames],
) -> tuple[CaseChange, ...]:
    """Return the cases that changed, put together by what they led to and lead to."""
    before = {_key(case): case for case in _cases(*old)}
    after = {_key(case): case for case in _cases(*new)}
    groups: dict[object, list[tuple[Case | None, Case | None]]] = {}
    for key in dict.fromkeys((*after, *before)):
        was, now = before.get(key), after.get(key)
        results = _result(was, renamed), _result(now, {})
        if results[0] != results[1]:
            groups.setdefault(results, []).append((was, now))
    return tuple(_group(pairs) for pairs in groups.values())


def _cases(library: Library, pathway: PathwayId) -> tuple[Case, ...]:
    has_table = library.pathways[pathway].cases is not None
    return cases(library, pathway) if has_table else ()


def _key(case: Case) -> frozenset[tuple[str, str]]:
    return frozenset(case.combination)


def _group(pairs: list[tuple[Case | None, Case | None]]) -> CaseChange:
    combinations = (now or was for was, now in pairs)
    return CaseChange(tuple(each.combination for each in combinations if each), *pairs[0])


def _result(case: Case | None, renamed: Mapping[PathwayId, Renames]) -> object:
    if case is None:
        return None
    plan = tuple(sorted(case.plan.items()))
    return plan, _now(case.outcome, renamed), bool(case.problem)


def _now(place: Place | None, renamed: Mapping[PathwayId, Renames]) -> Place | None:
    if place is None:
        return None
    return Place(place.pathway, renamed.get(place.pathway, {}).get(place.step, place.step))
