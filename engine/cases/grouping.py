"""Fewer rows that say the same: cases with one result, put together to whole blocks of findings."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from chamberwise.engine.cases.case import Case
from chamberwise.engine.model.words import FindingId, ValueId

Block = tuple[tuple[ValueId, ...], ...]


@dataclass(frozen=True, slots=True)
class CaseGroup:
    """Every combination of the values given leads to what `case` leads to."""

    findings: tuple[FindingId, ...]
    block: Block
    case: Case

    def holds(self, case: Case) -> bool:
        """Whether a case is one of the group's."""
        pairs = zip(self.block, case.combination, strict=True)
        return all(value in values for values, (_, value) in pairs)


def apart(found: Iterable[Case]) -> tuple[CaseGroup, ...]:
    """Return every case as a group of its own."""
    return tuple(_group(case, _alone(case)) for case in found)


def grouped(found: tuple[Case, ...]) -> tuple[CaseGroup, ...]:
    """Return the cases in few groups, ordinary ones first, each in document order."""
    order = _order(found)
    results: dict[object, list[Case]] = {}
    for case in found:
        results.setdefault(_result(case), []).append(case)
    groups = [
        _group(alike[0], block)
        for alike in results.values()
        for block in _merged(
            [tuple((value,) for _, value in case.combination) for case in alike], order
        )
    ]
    first = {case.combination: place for place, case in enumerate(found)}
    places = {id(group): _first(group, first) for group in groups}
    return tuple(sorted(groups, key=lambda each: (bool(each.case.improbable), places[id(each)])))


def _merged(blocks: list[Block], order: list[dict[ValueId, int]]) -> list[Block]:
    """Join blocks that differ on one finding alone, until none are left that do."""
    count = 0
    while count != len(blocks):
        count = len(blocks)
        for axis in reversed(range(len(order))):
            joined: dict[Block, set[ValueId]] = {}
            for block in blocks:
                joined.setdefault(block[:axis] + block[axis + 1 :], set()).update(block[axis])
            blocks = [
                (*others[:axis], tuple(sorted(values, key=order[axis].__getitem__)), *others[axis:])
                for others, values in joined.items()
            ]
    return blocks


def _order(found: tuple[Case, ...]) -> list[dict[ValueId, int]]:
    axes = len(found[0].combination) if found else 0
    columns = ([case.combination[axis][1] for case in found] for axis in range(axes))
    return [
        {value: place for place, value in enumerate(dict.fromkeys(column))} for column in columns
    ]


def _first(group: CaseGroup, places: dict[tuple[tuple[FindingId, ValueId], ...], int]) -> int:
    first = tuple(zip(group.findings, (values[0] for values in group.block), strict=True))
    return places[first]


def _alone(case: Case) -> Block:
    return tuple((value,) for _, value in case.combination)


def _group(case: Case, block: Block) -> CaseGroup:
    return CaseGroup(tuple(name for name, _ in case.combination), block, case)


def _result(case: Case) -> object:
    plan = tuple(sorted(case.plan.items()))
    return plan, case.outcome, case.improbable, case.looked_again, case.problem
