"""A placed sheet: pages of texts, shapes and arrows at fixed places, in millimetres from top left.

The order of the items of a page is its reading order. Nothing here knows what a pathway is; `of`
carries the name by which the round trip finds a thing again.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import IntEnum, StrEnum

from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sizes import Format


class Tier(IntEnum):
    """From how far a text is to be read: across the room, stepping up, at arm's length."""

    GLANCE = 1
    ACT = 2
    REFER = 3


class Weight(StrEnum):
    """How heavy a letter is."""

    REGULAR = "regular"
    MEDIUM = "medium"
    BOLD = "bold"


class Align(StrEnum):
    """How the lines of a text stand in its width."""

    LEFT = "left"
    CENTRE = "center"
    RIGHT = "right"


class Role(StrEnum):
    """What a text is, for tags, audit and reading aloud."""

    TITLE = "title"
    HEADING = "heading"
    STEP = "step"
    LINE = "line"
    QUESTION = "question"
    ANSWER = "answer"
    CAUTION = "caution"
    NUMBER = "number"
    NOTE = "note"
    FOOTER = "footer"
    MARK = "mark"
    """A stamp across the page: DRAFT, EXPIRED, TEMPLATE."""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text of one weight."""

    text: str
    weight: Weight = Weight.REGULAR


@dataclass(frozen=True, slots=True)
class Style:
    """How a text is set: size in points, leading as line pitch over size."""

    size: float
    weight: Weight = Weight.REGULAR
    ink: Ink = Ink.BLACK
    align: Align = Align.LEFT
    pitch: float = 1.28


@dataclass(frozen=True, slots=True)
class Text:
    """A block of text in a width; its height is what was measured for it."""

    x: float
    y: float
    width: float
    height: float
    runs: tuple[Run, ...]
    style: Style
    role: Role
    tier: Tier = Tier.ACT
    of: str = ""
    turned: float = 0.0
    """Degrees, clockwise."""

    @property
    def text(self) -> str:
        """The words without their weights."""
        return "".join(run.text for run in self.runs)


class Outline(StrEnum):
    """Flowchart symbols as ISO 5807 names them, and plain panels."""

    PROCESS = "process"
    DECISION = "decision"
    PREDEFINED_PROCESS = "predefined process"
    TERMINATOR = "terminator"
    CONNECTOR = "connector"
    PANEL = "panel"


@dataclass(frozen=True, slots=True)
class Shape:
    """An outline with a border, its weight in millimetres, and a ground."""

    outline: Outline
    x: float
    y: float
    width: float
    height: float
    border: Ink = Ink.BLACK
    ground: Ink = Ink.WHITE
    weight: float = 0.35
    of: str = ""


@dataclass(frozen=True, slots=True)
class Arrow:
    """A line along points, with a head at its end unless it only joins."""

    points: tuple[tuple[float, float], ...]
    weight: float = 0.5
    ink: Ink = Ink.BLACK
    has_head: bool = True
    is_dashed: bool = False
    of: str = ""


@dataclass(frozen=True, slots=True)
class Code:
    """A square of dark and light modules, row by row, quiet zone included."""

    x: float
    y: float
    side: float
    rows: tuple[str, ...]
    alternative: str


Item = Text | Shape | Arrow | Code


@dataclass(frozen=True, slots=True)
class Page:
    """One page; items in reading order, grounds before what stands on them."""

    format: Format
    items: tuple[Item, ...]

    @property
    def texts(self) -> tuple[Text, ...]:
        """The texts in reading order."""
        return tuple(each for each in self.items if isinstance(each, Text))


@dataclass(frozen=True, slots=True)
class Sheet:
    """A whole document. `made` dates the file; it is passed in, never taken from a clock."""

    title: str
    subject: str
    language: str
    made: date
    pages: tuple[Page, ...]
