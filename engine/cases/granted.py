"""What a table of cases takes for granted, and which other values there are."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chamberwise.engine.cases.answering import undecided
from chamberwise.engine.cases.hang import Granted, Taken
from chamberwise.engine.cases.way import reads
from chamberwise.engine.exploration.program import Program
from chamberwise.engine.meaning.layout import Field
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.engine.model.step import CANNOT_TELL, PathwayId
from chamberwise.engine.model.words import ValueId


def granted(
    library: Library, pathway: PathwayId, table: CaseTable, *, cannot_tell: bool
) -> Iterator[tuple[Taken, tuple[ValueId, ...]]]:
    """Yield every assumption of a table with the values it might have instead.

    Choices left to the unit are not among them: see `open_choices`.
    """
    kinds = ((Granted.ASSUMED, table.assume), (Granted.ASKED_AGAIN, table.asked_again))
    for kind, assumed in kinds:
        for name, value in assumed:
            finding = library.finding(pathway, name)
            in_table = kind is Granted.ASSUMED and name in table.over
            if not in_table and finding.choice is None:
                values = (*(each.id for each in finding.values), *((CANNOT_TELL,) * cannot_tell))
                yield Taken(kind, name, value), tuple(each for each in values if each != value)


@dataclass(frozen=True, slots=True)
class OpenChoice:
    """A choice that some walk goes by and the unit has not made, and the nodes that read it."""

    taken: Taken
    field: Field
    nodes: tuple[int, ...]


def open_choices(program: Program, table: CaseTable) -> Iterator[OpenChoice]:
    """Yield every choice not made that a step reads."""
    read: dict[int, tuple[Field, list[int]]] = {}
    for number, node in enumerate(program.nodes):
        for name in reads(node.step):
            field = program.layout.field(node.place.pathway, name)
            choice = field.finding.choice
            if choice and choice.chosen is None and name not in table.over:
                read.setdefault(field.every, (field, []))[1].append(number)
    for field, nodes in read.values():
        name = field.finding.id
        value = dict(table.assume).get(name) or undecided(field.finding) or CANNOT_TELL
        yield OpenChoice(Taken(Granted.CHOICE, name, value), field, tuple(nodes))
