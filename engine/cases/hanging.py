"""What each case hangs on, by walking it again with each thing taken for granted otherwise.

One thing at a time; with each of them every position of every choice not made as well, since a
choice may come up only then. What is told is exact for these walks and silent of all others.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from chamberwise.engine.cases.answering import chosen
from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.changes import Blocks
from chamberwise.engine.cases.flock import Answers, Flock, Lanes
from chamberwise.engine.cases.granted import OpenChoice, granted, open_choices
from chamberwise.engine.cases.hang import Change, Granted, Hang, Otherwise, Taken
from chamberwise.engine.cases.stepping import Stepping
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import FindingId, ValueId
from chamberwise.engine.reading.digest import reached_by_handover


@dataclass(frozen=True, slots=True)
class Block:
    """All cases once, with something taken otherwise, or a choice made, or both.

    `than` is the number of the block without its last difference.
    """

    taken: Taken | None = None
    value: ValueId = ""
    choice: Taken | None = None
    position: ValueId = ""
    every: int = 0
    known: int = 0
    """The bits of the choice, and of its position."""
    than: int = 0

    @property
    def differs_in(self) -> tuple[Taken | None, ValueId]:
        """What is otherwise than in the block it is held against, and the value it has."""
        return (self.choice, self.position) if self.choice else (self.taken, self.value)

    @property
    def once(self) -> tuple[FindingId, ValueId] | None:
        """What has to be otherwise already before the choice made can matter."""
        return (self.taken.finding, self.value) if self.choice and self.taken else None


def with_hangs(
    library: Library,
    pathway: PathwayId,
    table: CaseTable,
    found: Sequence[Case],
    *,
    cannot_tell: bool = False,
) -> tuple[Case, ...]:
    """Return the cases, each with what it hangs on; one without an outcome hangs on nothing."""
    undecided = (each for each in table.assume if not chosen(library.finding(pathway, each[0])))
    table = replace(table, assume=tuple(undecided))
    again = [name for name, _ in table.asked_again]
    stepping = Stepping(library, pathway, _fields(library, pathway, again))
    choices = tuple(open_choices(stepping.program, table))
    others = granted(library, pathway, table, cannot_tell=cannot_tell)
    singly = [Block(), *(Block(taken, value) for taken, values in others for value in values)]
    told: list[dict[Taken, list[Otherwise]]] = [{} for _ in found]
    flock = _walked(stepping, table, found, singly, choices)
    _tell(told, Blocks(flock.arrived, len(found)), singly)
    by_choice = [
        block for number, block in enumerate(singly) if _in(flock.came_by, number, len(found))
    ]
    if by_choice:
        doubly = [*_with_choices(by_choice, choices)]
        flock = _walked(stepping, table, found, doubly, choices)
        _tell(told, Blocks(flock.arrived, len(found)), doubly)
    return tuple(
        replace(case, hangs_on=_hangs(each) if case.outcome else ())
        for case, each in zip(found, told, strict=True)
    )


def _fields(library: Library, pathway: PathwayId, names: Sequence[FindingId]) -> Iterator[Field]:
    layout = layout_of(library)
    for each in reached_by_handover(library, pathway):
        yield from (field for field in layout.fields(each) if field.finding.id in names)


def _with_choices(blocks: Sequence[Block], choices: Sequence[OpenChoice]) -> Iterator[Block]:
    """Yield some blocks, each followed by itself with each position of each choice made."""
    number = 0
    for block in blocks:
        yield replace(block, than=number)
        made = [
            replace(
                block,
                choice=choice.taken,
                position=position,
                every=choice.field.every,
                known=bit,
                than=number,
            )
            for choice in choices
            for position, bit in choice.field.bits.items()
        ]
        yield from made
        number += 1 + len(made)


def _walked(
    stepping: Stepping,
    table: CaseTable,
    found: Sequence[Case],
    blocks: Sequence[Block],
    choices: Sequence[OpenChoice],
) -> Flock:
    starts: dict[int, Lanes] = {}
    whole = (1 << len(found)) - 1
    for number, block in enumerate(blocks):
        bits = stepping.program.first_bits & ~block.every | block.known
        starts[bits] = starts.get(bits, 0) | whole << number * len(found)
    noticed = {node for choice in choices for node in choice.nodes}
    flock = Flock(stepping, _answers(table, found, blocks, choices), noticed)
    flock.walk(starts)
    return flock


def _in(lanes: Lanes, block: int, size: int) -> Lanes:
    return lanes >> block * size & (1 << size) - 1


def _answers(
    table: CaseTable,
    found: Sequence[Case],
    blocks: Sequence[Block],
    choices: Sequence[OpenChoice],
) -> Answers:
    count = len(found)
    whole = (1 << count) - 1
    every = (1 << count * len(blocks)) - 1
    repeated = every // whole if whole else 0
    first: dict[FindingId, dict[ValueId, Lanes]] = {}
    for number, case in enumerate(found):
        for name, value in case.combination:
            by_value = first.setdefault(name, {})
            by_value[value] = by_value.get(value, 0) | repeated << number
    taken = [
        *(Taken(Granted.ASSUMED, *each) for each in table.assume),
        *(choice.taken for choice in choices),
    ]
    of_the_rest = {
        each.finding: _by_value(each, blocks, whole, count)
        for each in taken
        if each.finding not in first
    }
    again = {
        name: _by_value(Taken(Granted.ASKED_AGAIN, name, value), blocks, whole, count)
        for name, value in table.asked_again
    }
    return Answers(every, {**of_the_rest, **first}, again)


def _by_value(
    taken: Taken, blocks: Sequence[Block], whole: Lanes, count: int
) -> dict[ValueId, Lanes]:
    by_value: dict[ValueId, Lanes] = {}
    for number, block in enumerate(blocks):
        value = block.value if block.taken == taken else taken.value
        value = block.position if block.choice == taken else value
        by_value[value] = by_value.get(value, 0) | whole << number * count
    return by_value


def _tell(told: list[dict[Taken, list[Otherwise]]], ends: Blocks, blocks: Sequence[Block]) -> None:
    """Note for each case what the difference of each block changes."""
    for number, block in enumerate(blocks):
        taken, value = block.differs_in
        if taken is None or number == block.than:
            continue
        changes: dict[int, list[Change]] = {}
        for change, lanes in ends.differences(number, block.than):
            for case in _set_bits(lanes):
                changes.setdefault(case, []).append(change)
        for case, found in changes.items():
            known = told[case].setdefault(taken, [])
            if not any(each.value == value and each.once is None for each in known):
                known.append(Otherwise(value, tuple(found), block.once))


def _hangs(told: dict[Taken, list[Otherwise]]) -> tuple[Hang, ...]:
    return tuple(Hang(taken, tuple(others)) for taken, others in told.items())


def _set_bits(lanes: Lanes) -> Iterator[int]:
    while lanes:
        low = lanes & -lanes
        yield low.bit_length() - 1
        lanes ^= low
