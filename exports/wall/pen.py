"""Text for the chart: sizes in steps of one body size, boxes put round measured words."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.exports.flow.holding import held_run
from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.legibility.line import widest
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Align, Role, Run, Style, Text, Tier, Weight
from chamberwise.exports.typesetting.guessing import Asked, Guess, Meeting
from chamberwise.exports.typesetting.measuring import Room, Ruler, Setting

TITLE = 1.7
GLANCE = 1.9
HEAD = 1.12
PLAIN = 1.0
SMALL = 0.94
LEAST_SMALL = 9.2
LEAST_SIZE, MOST_SIZE, STEP = 8.5, 60.0, 0.5
"""Points: the body sizes that are tried."""
SLACK = 0.05
SNUG = 0.4
"""Millimetres that a line is given beyond its own width."""


class TooNarrowError(Exception):
    """A word is wider than its place."""


@dataclass(frozen=True, slots=True)
class Words:
    """Some words in a style, measured for a width."""

    runs: tuple[Run, ...]
    style: Style
    width: float
    room: Room
    role: Role
    tier: Tier
    of: str = ""

    @property
    def height(self) -> float:
        """Height in millimetres."""
        return self.room.height

    def at(self, x: float, y: float) -> Text:
        """Return the words standing somewhere."""
        return Text(
            x, y, self.width, self.height, self.runs, self.style, self.role, self.tier, self.of
        )


@dataclass(frozen=True, slots=True)
class Pen:
    """Sets words at a body size in points."""

    ruler: Ruler | Guess | Asked | Meeting
    size: float
    glance: float = GLANCE
    """How many times the body size the first actions have."""
    task: float = PLAIN
    """How many times the body size their tasks have."""
    air: float = 0.15
    """Body sizes between one task and the next."""
    left: float = 0.32
    """Of the width: the main line."""
    label: float = 0.3
    """Of the width: the answers beside it."""

    def em(self, times: float = 1.0) -> float:
        """Return so many body sizes, in millimetres."""
        return self.size * MM_PER_POINT * times

    def line(self, times: float = 1.0) -> float:
        """Return the weight of a line, in millimetres, that keeps pace with the letters."""
        return max(0.36, 0.11 * self.em()) * times

    def points(self, times: float) -> float:
        """Return a size in points, to a tenth; what may be small never goes below arm's length."""
        size = round(self.size * times, 1)
        return max(size, LEAST_SMALL)

    def words(
        self,
        text: str | tuple[Run, ...],
        width: float,
        times: float = PLAIN,
        *,
        weight: Weight = Weight.REGULAR,
        ink: Ink = Ink.BLACK,
        align: Align = Align.LEFT,
        role: Role = Role.LINE,
        tier: Tier = Tier.ACT,
        of: str = "",
    ) -> Words:
        """Return words measured for a width."""
        said = (Run(text),) if isinstance(text, str) else text
        runs = tuple([held_run(run) for run in said])
        style = Style(self.points(times), weight, ink, align, 1.26)
        width = min(width, widest(style.size)) if align is Align.LEFT else width
        room = self.ruler(Setting(runs, style, width))
        if room.longest > width + SLACK:
            raise TooNarrowError(text)
        is_one_line = align is Align.LEFT and room.width <= width and "\n" not in str(text)
        snug = min(width, room.width + SNUG) if is_one_line else width
        return Words(runs, style, snug, room, role, tier, of)
