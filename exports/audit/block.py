"""A placed text together with the lines it was printed as."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin

from chamberwise.exports.audit.geometry import Box, Point, around
from chamberwise.exports.audit.printed.content import Stretch
from chamberwise.exports.audit.rule import Where
from chamberwise.exports.legibility.angle import MM_PER_POINT, cap_height, x_height
from chamberwise.exports.paper.sheet import Role, Text, Tier

SHOWN = 60
ZERO_WIDE = "\u200b"
ADDRESS = re.compile(r"\b[\w-]+(?:\.[\w-]+)+/\S*")
"""An address on the web, with or without its scheme."""


@dataclass(frozen=True)
class Line:
    """What stands on one baseline. `along` and `across` are told in the text's own direction."""

    stretches: tuple[Stretch, ...]
    along: float
    across: float

    @cached_property
    def text(self) -> str:
        """Its words."""
        return "".join(each.text for each in self.stretches)

    @cached_property
    def box(self) -> Box:
        """What its letters cover."""
        return around([each.box for each in self.stretches])

    @cached_property
    def size(self) -> float:
        """The size of its largest letters, in points."""
        return max(each.size for each in self.stretches)


@dataclass(frozen=True)
class Block:
    """A placed text and its printed lines, none if nothing of it was printed."""

    text: Text
    page: int
    stretches: tuple[Stretch, ...]

    @property
    def role(self) -> Role:
        """What the text is."""
        return self.text.role

    @property
    def tier(self) -> Tier:
        """From how far it is to be read; notes and the foot always at arm's length."""
        return Tier.REFER if self.role in (Role.NOTE, Role.FOOTER) else self.text.tier

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        """Its printed lines from the first to the last."""
        return lines_of(self.stretches, self.text.turned)

    @cached_property
    def words(self) -> str:
        """The printed words; a line break is a line feed."""
        return "\n".join(line.text.strip() for line in self.lines)

    @cached_property
    def flat(self) -> str:
        """The printed words on one line, as they are read aloud."""
        return " ".join(line.text.strip() for line in self.lines)

    @cached_property
    def prose(self) -> str:
        """The same less addresses: those are copied as they are, whatever they spell.

        Which words are an address is told by the placed text, for a line may end within one.
        """
        printed = self.flat
        placed = self.text.text.replace(ZERO_WIDE, "") if "/" in printed else ""
        for address in ADDRESS.findall(placed):
            spaced = rf"[\s{ZERO_WIDE}]*".join(re.escape(each) for each in address)
            printed = re.sub(spaced, "", printed)
        return printed

    @cached_property
    def size(self) -> float:
        """The size of its smallest letters, in points."""
        return min(each.size for each in self.stretches)

    @cached_property
    def x_height(self) -> float:
        """Height of its small letters, in millimetres."""
        return x_height(self.size)

    @property
    def cap_height(self) -> float:
        """Height of its capitals, in millimetres."""
        return cap_height(self.size)

    @cached_property
    def box(self) -> Box:
        """What its letters cover, or its place if nothing was printed."""
        if self.stretches:
            return around([each.box for each in self.stretches])
        return placed_box(self.text)

    @cached_property
    def where(self) -> Where:
        """Its place and first words."""
        return Where(self.page, self.text.x, self.text.y, _short(self.text.text))


def where_of(stretch: Stretch, page: int) -> Where:
    """Return the place of a stretch."""
    return Where(page, stretch.box.left, stretch.box.top, _short(stretch.text))


def placed_box(text: Text) -> Box:
    """Return the room a placed text takes on paper, turned as it is."""
    box = Box(text.x, text.y, text.x + text.width, text.y + text.height)
    if not text.turned:
        return box
    x, y = box.centre
    angle = radians(text.turned)
    wide = abs(box.width * cos(angle)) + abs(box.height * sin(angle))
    high = abs(box.width * sin(angle)) + abs(box.height * cos(angle))
    return Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)


def lines_of(stretches: Sequence[Stretch], turned: float) -> tuple[Line, ...]:
    """Return stretches gathered by baseline."""
    placed = sorted(((*_own(each.origin, turned), each) for each in stretches), key=_down_and_on)
    rows: list[list[tuple[float, float, Stretch]]] = []
    for one in placed:
        reach = one[2].size * MM_PER_POINT * 0.2
        if rows and abs(one[1] - rows[-1][0][1]) <= reach:
            rows[-1].append(one)
        else:
            rows.append([one])
    return tuple(
        Line(tuple(each[2] for each in row), row[0][0], row[0][1])
        for row in (sorted(row, key=lambda each: each[0]) for row in rows)
    )


def _down_and_on(one: tuple[float, float, Stretch]) -> tuple[float, float]:
    return one[1], one[0]


def _own(point: Point, turned: float) -> Point:
    angle = radians(turned)
    x, y = point
    return x * cos(angle) + y * sin(angle), y * cos(angle) - x * sin(angle)


def _short(text: str) -> str:
    flat = " ".join(text.split())
    return flat if len(flat) <= SHOWN else flat[: SHOWN - 1] + "…"
