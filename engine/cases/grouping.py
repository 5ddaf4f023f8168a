"""Fewer rows that say the same: cases with one result, put together to whole blocks of findings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import product

from chamberwise.engine.cases.case import Case, Combination
from chamberwise.engine.cases.hang import Otherwise, Taken
from chamberwise.engine.model.words import FindingId, ValueId

Block = tuple[tuple[ValueId, ...], ...]
Once = tuple[tuple[FindingId, ValueId], ...]
"""Findings with values, any one of which will do."""


@dataclass(frozen=True, slots=True)
class CaseGroup:
    """Every combination of the values given leads to what `case` leads to.

    `hangs_on` is what at least one of them hangs on, with what would have to be otherwise as well:
    nothing where there is one that hangs on it alone.
    """

    findings: tuple[FindingId, ...]
    block: Block
    case: Case
    hangs_on: Mapping[Taken, Once]

    def holds(self, case: Case) -> bool:
        """Whether a case is one of the group's."""
        pairs = zip(self.block, case.combination, strict=True)
        return all(value in values for values, (_, value) in pairs)


def apart(found: Iterable[Case]) -> tuple[CaseGroup, ...]:
    """Return every case as a group of its own."""
    return tuple(_group([case], _alone(case)) for case in found)


def grouped(found: tuple[Case, ...]) -> tuple[CaseGroup, ...]:
    """Return the cases in few groups, ordinary ones first, each in document order."""
    order = _order(found)
    results: dict[object, list[Case]] = {}
    for case in found:
        results.setdefault(_result(case), []).append(case)
    case_of = {case.combination: case for case in found}
    groups = []
    for alike in results.values():
        names = tuple(name for name, _ in alike[0].combination)
        for block in _merged([_alone(case) for case in alike], order):
            groups.append(_group([case_of[each] for each in _within(names, block)], block))
    first = {case.combination: place for place, case in enumerate(found)}
    return tuple(
        sorted(groups, key=lambda each: (each.case.improbable, first[each.case.combination]))
    )


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


def _within(names: tuple[FindingId, ...], block: Block) -> Iterator[Combination]:
    """Yield the combinations of a block in document order."""
    for values in product(*block):
        yield tuple(zip(names, values, strict=True))


def _alone(case: Case) -> Block:
    return tuple((value,) for _, value in case.combination)


def _group(members: list[Case], block: Block) -> CaseGroup:
    names = tuple(name for name, _ in members[0].combination)
    return CaseGroup(names, block, members[0], _hangs(members))


def _hangs(members: list[Case]) -> Mapping[Taken, Once]:
    others: dict[Taken, list[Otherwise]] = {}
    for case in members:
        for hang in case.hangs_on:
            others.setdefault(hang.taken, []).extend(hang.others)
    return {taken: once(each) for taken, each in others.items()}


def once(others: Iterable[Otherwise]) -> Once:
    """Return what has to be otherwise as well; nothing where some value matters by itself."""
    conditions = dict.fromkeys(each.once for each in others)
    return () if None in conditions else tuple(each for each in conditions if each)


def _result(case: Case) -> object:
    plan = tuple(sorted(case.plan.items()))
    doubts = tuple((each.because, each.stands_at is None) for each in case.doubts)
    return plan, case.outcome, doubts, case.problem
