"""A sheet with all that the rules ask of it, worked out once."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from chamberwise.exports.audit.block import Block, placed_box
from chamberwise.exports.audit.flow import Flow, box_of, flow_of
from chamberwise.exports.audit.geometry import Box, Point
from chamberwise.exports.audit.kinds import ON_THE_WALL
from chamberwise.exports.audit.printed.content import Leaf, Path, Printed, Stretch
from chamberwise.exports.audit.rule import Where
from chamberwise.exports.audit.terms import Distances, Terms, usual_distances
from chamberwise.exports.control.content import Control
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Shape, Sheet, Text, Tier

LEAST_GROUND = 3.0
"""Areas narrower than this, in millimetres, are no ground of a text: heads, modules."""
FAR = re.compile(r"(?:[Uu]p to|[Bb]is zu|[Bb]is) (\d+(?:[.,]\d+)?) ?(c?m)(?!\w)")
PLAIN = str.maketrans({"\u00a0": " ", "\u202f": " ", "\u2007": " ", "\u200b": None, "\u2060": None})


@dataclass(frozen=True)
class Side:
    """One page: as placed, as printed, and the two put together."""

    number: int
    page: Page
    leaf: Leaf
    terms: Terms

    @cached_property
    def blocks(self) -> tuple[Block, ...]:
        """Every placed text with what was printed for it, in reading order."""
        texts = self.page.texts
        found: list[list[Stretch]] = [[] for _ in texts]
        rooms = [placed_box(text).grown(0.5) for text in texts]
        letters = [_letters(text) for text in texts]
        for stretch in self.leaf.stretches:
            place = _owner(stretch, rooms, letters)
            if place is not None:
                found[place].append(stretch)
        return tuple(
            Block(text, self.number, tuple(stretches))
            for text, stretches in zip(texts, found, strict=True)
        )

    @cached_property
    def shapes(self) -> tuple[tuple[Box, Shape], ...]:
        """Every shape with the rectangle round it."""
        return tuple((box_of(each), each) for each in self.page.items if isinstance(each, Shape))

    @cached_property
    def strays(self) -> tuple[Stretch, ...]:
        """What is printed where no text was placed."""
        owned = {id(each) for block in self.blocks for each in block.stretches}
        return tuple(each for each in self.leaf.stretches if id(each) not in owned)

    @cached_property
    def text(self) -> str:
        """All printed words of the page with plain spaces, line by line."""
        return " ".join(" ".join(block.flat.split()) for block in self.blocks).translate(PLAIN)

    @cached_property
    def flow(self) -> Flow:
        """The chart on the page."""
        return flow_of(self.page)

    @cached_property
    def printed_distances(self) -> tuple[float, ...]:
        """The distances the page says it is read from, in metres, in their order."""
        return tuple(metres for metres, _ in self.distances_told)

    @cached_property
    def distances_told(self) -> tuple[tuple[float, float], ...]:
        """The same, each with the step it was rounded to."""
        return tuple(
            (float(number) / scale, 10.0 ** -len(number.partition(".")[2]) / scale)
            for written, unit in FAR.findall(self.text)
            for number in (written.replace(",", "."),)
            for scale in (100 if unit == "cm" else 1,)
        )

    @cached_property
    def distances(self) -> Distances:
        """From where each tier is read: as asked for, else as printed, else as is usual."""
        usual, printed = usual_distances(self.terms.kind), self.printed_distances
        glance = self.terms.distance or (printed[0] if printed else usual.glance)
        act = glance * usual.act / usual.glance
        if printed and not self.terms.distance:
            # One distance is that of everything on the page.
            act = printed[:2][-1]
        elif len(printed) > 1:
            # What was asked for is asked of the first tier; steps keep to what the sheet says.
            act = min(act, printed[1])
        return Distances(glance, act)

    def distance(self, tier: Tier) -> float:
        """Return from how far a tier is read on this page, in millimetres."""
        far = self.distances
        return 1000 * {Tier.GLANCE: far.glance, Tier.ACT: far.act, Tier.REFER: far.refer}[tier]

    def usual_distance(self, tier: Tier) -> float:
        """Return from how far a tier is looked at: in the hand, however far it can be read."""
        far = self.distance(tier)
        if self.terms.kind in ON_THE_WALL or self.terms.distance:
            return far
        return min(far, 1000 * usual_distances(self.terms.kind).act)

    @cached_property
    def grounds(self) -> tuple[Path, ...]:
        """The filled areas, in the order of painting."""
        return tuple(
            path
            for path in self.leaf.paths
            if path.fill and path.box.width > LEAST_GROUND and path.box.height > LEAST_GROUND
        )

    def ground(self, point: Point, before: int) -> str:
        """Return the colour on which something painted at `before` stands."""
        last = bisect_left([path.order for path in self.grounds], before)
        for path in reversed(self.grounds[:last]):
            if path.fill and path.box.holds(point):
                return path.fill
        return Ink.WHITE.value

    @property
    def top(self) -> Where:
        """The page as a place."""
        return Where(self.number)

    @property
    def box(self) -> Box:
        """The page's edges."""
        return Box(0, 0, self.leaf.width, self.leaf.height)


@dataclass(frozen=True)
class Subject:
    """The sheet, the file, the terms."""

    sheet: Sheet
    printed: Printed
    terms: Terms
    sides: tuple[Side, ...]

    @property
    def control(self) -> Control:
        """The document control, for rules of sheets that have one."""
        if self.terms.control is None:
            raise ValueError(self.terms.kind)
        return self.terms.control

    @cached_property
    def _printed(self) -> tuple[tuple[Side, Block], ...]:
        return tuple((side, each) for side in self.sides for each in side.blocks if each.stretches)

    def blocks(self, *roles: Role) -> Iterator[tuple[Side, Block]]:
        """Yield printed blocks, of some roles or of all; blank ones are left out."""
        for side, block in self._printed:
            if not roles or block.role in roles:
                yield side, block

    def to_act_on(self) -> Iterator[tuple[Side, Block]]:
        """Yield what is read from across the room or when stepping up."""
        for side, block in self.blocks():
            if block.tier is not Tier.REFER:
                yield side, block


def subject_of(sheet: Sheet, printed: Printed, terms: Terms) -> Subject:
    """Return a sheet and its file put together, page by page."""
    sides = tuple(
        Side(number, page, leaf, terms)
        for number, (page, leaf) in enumerate(
            zip(sheet.pages, printed.leaves, strict=False), start=1
        )
    )
    return Subject(sheet, printed, terms, sides)


def _letters(text: Text) -> str:
    return "".join(text.text.split())


def _owner(stretch: Stretch, rooms: list[Box], letters: list[str]) -> int | None:
    """Return which text a stretch belongs to: the least room with those words, or any room."""
    middle, read = stretch.box.centre, "".join(stretch.text.split())
    inside = [place for place, room in enumerate(rooms) if room.holds(middle)]
    same = [place for place in inside if read in letters[place]]
    return min(same or inside, key=lambda place: rooms[place].area, default=None)
