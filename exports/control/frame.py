"""The frame of a page: marks at its head, control at its foot, and the room between."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import NamedTuple

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import EXPIRED, Control
from chamberwise.exports.control.lines import (
    currency,
    exceptions,
    identity,
    page_told,
    rule_of_use,
    translated,
    until,
)
from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Align,
    Arrow,
    Code,
    Item,
    Outline,
    Page,
    Role,
    Run,
    Shape,
    Style,
    Text,
    Tier,
    Weight,
)
from chamberwise.exports.paper.sizes import Format
from chamberwise.exports.typesetting.measuring import Room, Ruler, Setting

MARGIN = 12.0
GAP = 2.0
BAR = 100.0
FOOT_SIZE = 9.2
"""Points: 12 minutes of arc at half a metre."""
UNTIL_SIZE = 11.5
"""Points: when the paper is out of date, and its page, are looked for and not only looked up."""
FARTHEST = N_("Read from up to 10.0 m.")
WIDEST = 999
"""A page number for which there has to be room."""
MARK_SIZE = 13.0
MARK_PAD = 2.0


class Body(NamedTuple):
    """The room of a page that is left for its content, in millimetres."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.y + self.height


@dataclass(slots=True)
class Frame:
    """Head and foot for pages of one format."""

    ruler: Ruler
    control: Control
    format: Format
    holds: str = ""
    """The most words that the foot of a page says of what is looked up on it."""

    @property
    def scale(self) -> float:
        """Head and foot grow with the paper, from A3 on."""
        return max(1.0, min(self.format) / 297)

    @property
    def foot(self) -> Style:
        """How the foot is set."""
        return Style(round(FOOT_SIZE * self.scale, 1), ink=Ink.GREY, pitch=1.25)

    @property
    def body(self) -> Body:
        """The room between head and foot."""
        width, height = self.format
        self.ruler.measure((*self._marked(), self._telling(_(FARTHEST) * 3), *self._standing()))
        top = MARGIN + self._head_height()
        bottom = height - MARGIN - self._foot_height() - GAP
        return Body(MARGIN, top, width - 2 * MARGIN, bottom - top)

    def page(
        self, items: tuple[Item, ...], number: int, of: int, far: str = "", holds: str = ""
    ) -> Page:
        """Return a page; `far` says from how far it can be read, `holds` what is on it."""
        return Page(self.format, (*self._head(), *items, *self._foot(number, of, far, holds)))

    def _head_height(self) -> float:
        rows = len(self._marks())
        return rows * (self._mark_height() + 1) + (GAP if rows else 0)

    def _mark_height(self) -> float:
        return MARK_SIZE * self.scale * MM_PER_POINT * 1.5

    def _marks(self) -> list[list[tuple[Setting, Room]]]:
        """Return the marks in rows, as many in a row as have room beside each other."""
        whole = self.format.width - 2 * MARGIN
        rows: list[list[tuple[Setting, Room]]] = []
        left = 0.0
        for setting in self._marked():
            room = self.ruler(setting)
            needed = room.width + 2 * MARK_PAD
            if not rows or needed > left:
                rows, left = [*rows, []], whole
            rows[-1].append((setting, room))
            left -= needed + 1
        return rows

    def _marked(self) -> list[Setting]:
        style = Style(round(MARK_SIZE * self.scale, 1), Weight.BOLD, Ink.WHITE, Align.CENTRE)
        width = self.format.width - 2 * (MARGIN + MARK_PAD)
        return [Setting((Run(mark),), style, width) for mark in self.control.marks]

    def _head(self) -> list[Item]:
        items: list[Item] = []
        y, high = MARGIN, self._mark_height()
        for row in self._marks():
            x, bare = MARGIN, self.format.width - 2 * MARGIN - (len(row) - 1)
            spare = (bare - sum(room.width for _where, room in row)) / len(row)
            for setting, room in row:
                width = room.width + spare
                ink = Ink.DANGER if setting.runs[0].text == _(EXPIRED) else Ink.BLACK
                bar = Shape(Outline.PANEL, x, y, width, high, ink, ink, 0)
                top = y + (high - room.height) / 2
                text = Text(
                    x + 1, top, width - 2, room.height, setting.runs, setting.style,
                    Role.MARK, Tier.REFER,
                )  # fmt: skip
                items += [bar, text]
                x += width + 1
            y += high + 1
        return items

    def _foot_height(self) -> float:
        high = self.ruler(self._telling(_(FARTHEST) * 3)).height
        return self._until("")[1] + max(high + 4.4, self._code_side() + 1.2)

    def _code_side(self) -> float:
        return (
            max(20.0 * self.scale, 0.62 * len(self.control.modules))
            if self.control.modules
            else 0.0
        )

    def _telling(self, far: str) -> Setting:
        """Return what the foot says, run on to take few lines."""
        parts = (
            rule_of_use(),
            translated(self.control),
            exceptions(self.control),
            (Run(identity(self.control)),),
        )
        spaced = [run for part in parts if part for run in (Run(" "), *part)]
        # The stamp begins a line: one that a line end parts is typed wrongly.
        runs = (*spaced[1:], Run("\n" + currency(self.control, far)))
        return Setting(runs, self.foot, self._foot_width())

    def _standing(self) -> list[Setting]:
        """Return until when the paper holds, and the longest that is said of a page."""
        style = Style(round(UNTIL_SIZE * self.scale, 1), Weight.BOLD, pitch=1.25)
        said = until(self.control), page_told(WIDEST, WIDEST, self.holds)
        return [Setting((Run(each),), style, self.format.width - 2 * MARGIN) for each in said]

    def _until(self, page: str) -> tuple[list[Item], float]:
        """Return until when the paper holds and which page it is, and how high that is.

        The two stand on one line where the longest of any page has room beside the other.
        """
        settings = self._standing()
        said, other = (self.ruler(each) for each in settings)
        runs, left, width = settings[0]
        is_one_line = said.width + other.width + left.size * MM_PER_POINT * 2 <= width
        high, y = said.height, 0.0 if is_one_line else said.height + 0.8
        x = min(width, said.width + 0.4) if is_one_line else 0.0
        right = replace(left, align=Align.RIGHT if is_one_line else Align.LEFT)
        of_page = (Run(page),)
        first = Text(0, 0, x or width, high, runs, left, Role.FOOTER, Tier.REFER)
        second = Text(x, y, width - x, other.height, of_page, right, Role.FOOTER, Tier.REFER)
        return [first, second], y + max(high, other.height) + 0.4

    def _foot_width(self) -> float:
        side = self._code_side()
        return self.format.width - 2 * MARGIN - (side + 4 if side else 0)

    def _foot(self, number: int, of: int, far: str, holds: str) -> list[Item]:
        width, height = self.format
        top = height - MARGIN - self._foot_height()
        items: list[Item] = [
            Arrow(((MARGIN, top), (width - MARGIN, top)), 0.3, Ink.BLACK, has_head=False)
        ]
        standing, above = self._until(page_told(number, of, holds))
        y = top + above + 1.6
        told = self._telling(far)
        high = self.ruler(told).height
        # Whoever hears the page hears the rule of use first.
        items += [
            Text(MARGIN, y, told.width, high, told.runs, told.style, Role.FOOTER, Tier.REFER),
            *(moved(each, MARGIN, top + 1.2) for each in standing),
        ]
        top += above
        items += self._bar(y + high + 1.8)
        if self.control.modules:
            side = self._code_side()
            code = _("Stamp {code}").format(code=self.control.code)
            items.append(Code(width - MARGIN - side, top + 1.2, side, self.control.modules, code))
        return items

    def _bar(self, y: float) -> list[Item]:
        x = MARGIN
        ends = [((x + at, y - 0.8), (x + at, y + 0.8)) for at in (0.0, BAR)]
        return [
            Arrow(points, 0.25, Ink.BLACK, has_head=False)
            for points in (((x, y), (x + BAR, y)), *ends)
        ]
