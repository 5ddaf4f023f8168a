"""What a wall chart says, before anything is placed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from itertools import zip_longest

MOST_BOXES = 25
"""On a page."""


class Sign(StrEnum):
    """What a box stands for."""

    ACTION = "action"
    DECISION = "decision"
    CHART = "another chart"
    END = "end"


@dataclass(frozen=True, slots=True)
class Task:
    """What one duty does or says in an action, one instruction after the other."""

    who: str
    text: str


@dataclass(frozen=True, slots=True)
class First:
    """One of the first actions: everybody's tasks, and the choices of the unit it depends on."""

    step: str
    headline: str
    lines: tuple[Task, ...]
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Stop:
    """Where a way ends: a row of this chart, a step of the full pathway, a chart or an end."""

    sign: Sign | None
    text: str
    row: int = 0
    full: int = 0

    @property
    def is_asked(self) -> bool:
        """Whether somebody is asked there; a silent fork only decides."""
        return self.sign is Sign.DECISION and "?" in self.text


@dataclass(frozen=True, slots=True)
class Side:
    """A way that leaves the main line: on which answers, what is done, where it ends."""

    label: str
    done: tuple[str, ...]
    stop: Stop
    of: str

    @property
    def boxes(self) -> int:
        """How many boxes it takes: what is done, and where it ends unless a number says that."""
        is_told = bool(self.stop.row) or bool(self.done and self.stop.full)
        is_box = not is_told or self.stop.sign is Sign.CHART
        return bool(self.done) + is_box


@dataclass(frozen=True, slots=True)
class Down:
    """The way on to the next row; `via` is the step of the full pathway it first comes to."""

    label: str
    via: int = 0


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the main line. `down` is missing where nothing leads to the next row."""

    number: int
    step: str
    sign: Sign
    text: str
    phase: str
    sides: tuple[Side, ...]
    down: Down | None
    opens: bool = False
    """Whether its phase begins with it."""

    @property
    def boxes(self) -> int:
        """How many boxes it takes, with those to its side."""
        return 1 + sum(side.boxes for side in self.sides)


@dataclass(frozen=True, slots=True)
class Note:
    """A danger, and what to do instead."""

    signal: str
    harm: str
    instead: str


@dataclass(frozen=True, slots=True)
class Place:
    """Where something lies that the unit keeps, and by which rows it is needed; 0: at once."""

    item: str
    told: str
    rows: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Wall:
    """The whole chart."""

    pathway: str
    title: str
    use_when: str
    first: tuple[First, ...]
    rows: tuple[Row, ...]
    opening: Down | None
    """How the first actions lead to the first row, where not at once."""
    calls: tuple[str, ...]
    notes: tuple[Note, ...]
    more_notes: int
    steps: int
    """How many steps the full pathway has."""
    numbers: tuple[str, ...] = ()
    """How each of the calls is made; empty where the unit has not set it."""
    unit: str = ""
    places: tuple[Place, ...] = ()

    def lying(self, rows: frozenset[int]) -> tuple[Place, ...]:
        """Return where things lie that some rows need, or with row 0 the first actions."""
        return tuple(each for each in self.places if rows & frozenset(each.rows))

    @property
    def phones(self) -> tuple[tuple[str, str], ...]:
        """Each call with how it is made, or with nothing."""
        return tuple(zip_longest(self.calls, self.numbers[: len(self.calls)], fillvalue=""))

    @property
    def boxes(self) -> int:
        """How many boxes the reader meets."""
        return len(self.first) + sum(row.boxes for row in self.rows)
