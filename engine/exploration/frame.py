"""What a pathway handed over to can see and change; the rest passes it by untouched."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.step import PathwayId


@dataclass(frozen=True, slots=True)
class Frame:
    """`reads` are the bits of findings it looks at, `writes` the fields it only overwrites.

    A field only written enters with no bit set, which no knowledge ever has: where it comes out
    so, it was not written.
    """

    reads: int
    writes: tuple[int, ...]

    def effect(self, after: int) -> tuple[int, int]:
        """Return `keep` and `add`: a walk over there ending with `after` makes of bits

        `bits & keep | add`.
        """
        written = self.reads
        for every in self.writes:
            if after & every:
                written |= every
        return ~written, after & written


def frames(program: Program) -> dict[PathwayId, Frame]:
    """Return the frame of every pathway that a handover of the program comes back from."""
    returning = {call.pathway for call in program.calls.values() if call.back}
    return {name: _frame(program, name) for name in returning}


def _frame(program: Program, pathway: PathwayId) -> Frame:
    reads, kills = 0, 0
    for name in _within(program, pathway):
        for node in program.nodes:
            if node.place.pathway == name:
                reads |= node.reads
                kills |= node.kills
    findings = program.layout.every
    every_field = [
        field.every
        for fields in (program.layout.shared, *program.layout.own.values())
        for field in fields.values()
    ]
    writes = tuple(every for every in every_field if every & kills and not every & reads)
    return Frame(reads & findings, writes)


def _within(program: Program, pathway: PathwayId) -> list[PathwayId]:
    """Return a pathway and those it is certain to come back from."""
    names = [pathway]
    for name in names:
        for place, call in program.calls.items():
            inside = program.nodes[place].place.pathway == name and call.back
            if inside and call.pathway not in names:
                names.append(call.pathway)
    return names
