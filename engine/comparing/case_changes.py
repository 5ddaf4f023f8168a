"""Cases whose plan or outcome is another now."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.cases.case import Case, Combination
from chamberwise.engine.cases.table import cases
from chamberwise.engine.model.library import Library
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
) -> tuple[CaseChange, ...]:
    """Return the cases that changed, put together by what they led to and lead to.

    Both sides call everything alike.
    """
    before = {_key(case): case for case in _cases(*old)}
    after = {_key(case): case for case in _cases(*new)}
    groups: dict[object, list[tuple[Case | None, Case | None]]] = {}
    for key in dict.fromkeys((*after, *before)):
        was, now = before.get(key), after.get(key)
        results = _result(was), _result(now)
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


def _result(case: Case | None) -> object:
    if case is None:
        return None
    return tuple(sorted(case.plan.items())), case.outcome, bool(case.problem)
