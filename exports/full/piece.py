"""A piece: a few items that belong together, placed from nought, and how high they stand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from chamberwise.exports.legibility.line import widest
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Item,
    Outline,
    Role,
    Run,
    Shape,
    Style,
    Text,
    Tier,
    Weight,
)
from chamberwise.exports.typesetting.measuring import Room, Ruler, Setting

PITCH = 1.25
"""Line pitch over size, the least that is read with ease."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Items from nought, their height, and by how much the widest word is too wide for it."""

    height: float
    items: tuple[Item, ...]
    over: float = 0.0
    word: str = ""
    """The text that is too wide, where `over` is above nought."""

    def at(self, x: float, y: float) -> tuple[Item, ...]:
        """Return the items moved to a place."""
        return tuple(moved(item, x, y) for item in self.items)


def stacked(pieces: Iterable[Piece], gap: float) -> Piece:
    """Return pieces one below the other as one."""
    y, items, over, word = 0.0, list[Item](), 0.0, ""
    for piece in pieces:
        y += gap if items else 0.0
        items += piece.at(0.0, y)
        y += piece.height
        if piece.over > over:
            over, word = piece.over, piece.word
    return Piece(y, tuple(items), over, word)


class Collecting(Ruler):
    """A ruler that only notes what it is asked, so that all is then measured in one go."""

    def __call__(self, setting: Setting) -> Room:
        """Note a text; tell something harmless."""
        self.known.setdefault(setting, Room(1.0, 1.0, 1.0))
        return self.known[setting]


@dataclass(frozen=True, slots=True)
class Setter:
    """Sets texts in the styles of this print; every length grows with `scale`."""

    ruler: Ruler
    scale: float = 1.0

    def mm(self, length: float) -> float:
        """Return a length that grows with the type."""
        return length * self.scale

    def style(self, size: float, weight: Weight = Weight.REGULAR, ink: Ink = Ink.BLACK) -> Style:
        """Return a style; the size is that of a print for the hand."""
        return Style(size * self.scale, weight, ink, pitch=PITCH)

    @property
    def body(self) -> Style:
        """What is read and done."""
        return self.style(10)

    @property
    def note(self) -> Style:
        """What is read second."""
        return self.style(9.2, ink=Ink.GREY)

    @property
    def head(self) -> Style:
        """Questions and headlines."""
        return self.style(11.5, Weight.BOLD)

    def text(
        self,
        words: str | tuple[Run, ...],
        style: Style,
        width: float,
        role: Role,
        of: str = "",
        tier: Tier = Tier.ACT,
    ) -> Piece:
        """Return words in a width, or in the narrower one in which lines stay short."""
        runs = (Run(words),) if isinstance(words, str) else words
        wide = min(width, widest(style.size))
        room = self.ruler(Setting(runs, style, wide))
        if room.longest > wide:
            wide = width
            room = self.ruler(Setting(runs, style, wide))
        tier = Tier.REFER if role in (Role.NOTE, Role.FOOTER) else tier
        text = Text(0.0, 0.0, wide, room.height, runs, style, role, tier, of)
        return Piece(room.height, (text,), max(0.0, room.longest - wide), text.text)

    def centred(
        self,
        words: str,
        style: Style,
        shape: Shape,
        role: Role,
        of: str = "",
        tier: Tier = Tier.ACT,
    ) -> tuple[Item, ...]:
        """Return a shape with words of one line in its middle."""
        room = self.ruler(Setting((Run(words),), style, 1000.0))
        x = shape.x + (shape.width - room.width) / 2
        y = shape.y + (shape.height - room.height) / 2
        wide = room.width + 0.05
        text = Text(x, y, wide, room.height, (Run(words),), style, role, tier, of)
        return (shape, text)


def box(outline: Outline, width: float, height: float, weight: float, of: str) -> Shape:
    """Return an outline from nought."""
    return Shape(outline, 0.0, 0.0, width, height, weight=weight, of=of)
