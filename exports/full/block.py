"""A step as a block: its ISO 5807 symbol with its number, its words, its ways out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.cautions import caution
from chamberwise.exports.full.content import Caution, Kind, Step
from chamberwise.exports.full.exits import RAIL, down_row, exit_row, is_labelled, split_ways
from chamberwise.exports.full.piece import Piece, Setter, box, stacked
from chamberwise.exports.full.words import after_runs, before_runs, line_runs
from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.legibility.marks_above import above
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Item, Outline, Role, Run, Shape, Style, Weight

DIAMOND = 10.5
NUMBER = 5.0
"""Height of the line that holds a number."""
PAD = 2.05
BARS = 1.8
"""The side bars of a handover."""
GAP = 0.9

OUTLINES = {
    Kind.ACTION: Outline.PROCESS,
    Kind.HANDOVER: Outline.PREDEFINED_PROCESS,
    Kind.OUTCOME: Outline.TERMINATOR,
}


@dataclass(frozen=True, slots=True)
class Told:
    """What other places of the print say: the page of each step; cautions told on this page."""

    pages: Mapping[int, int]
    cautions: Mapping[Caution, int]
    """A caution without its place, and the step of this page that tells it in full."""


NOTHING = Told({}, {})
Form: TypeAlias = tuple[int, bool, tuple[tuple[Caution, int], ...]]
"""A step by number, whether an arrow leads down from it, and the cautions told elsewhere."""


@dataclass(frozen=True, slots=True)
class Block:
    """A placed step; arrows down come in at `top` and go out at `foot`, from its upper edge."""

    piece: Piece
    top: float
    foot: float

    @property
    def height(self) -> float:
        """How high it stands."""
        return self.piece.height


@dataclass(frozen=True, slots=True)
class Blocks:
    """Makes blocks of one column width."""

    setter: Setter
    width: float
    _made: dict[Form, Block] = field(default_factory=dict, compare=False)

    def block(self, step: Step, *, is_down: bool, told: Told = NOTHING) -> Block:
        """Return a step; `is_down` when an arrow leads from it straight down to the next."""
        if told.pages:  # for each page once, at the very end
            return self._assembled(step, self._pieces(step, is_down, told), is_down)
        form = (step.number, is_down, tuple(told.cautions.items()))
        if form not in self._made:
            self._made[form] = self._assembled(step, self._pieces(step, is_down, told), is_down)
        return self._made[form]

    def chunks(self, step: Step, height: float, told: Told) -> list[Block]:
        """Return a step that is longer than a column in parts, cut between its lines."""
        room = height - 2 * self.setter.mm(PAD + 6.0)
        parts: list[list[Piece]] = [[]]
        for piece in self._pieces(step, False, told):
            if parts[-1] and self._height([*parts[-1], piece]) > room:
                parts.append([self._continued(step)])
            parts[-1].append(piece)
        return [self._assembled(step, part, False) for part in parts]

    def _height(self, pieces: Sequence[Piece]) -> float:
        return stacked(pieces, self.setter.mm(GAP)).height

    def _continued(self, step: Step) -> Piece:
        width = self._inside(step, False) - self._hang(step, False)
        text = self.setter.text(_("(continued)"), self.setter.note, width, Role.NOTE)
        return self._beside_number(step, text, False)

    def _pieces(self, step: Step, is_down: bool, told: Told) -> list[Piece]:
        width = self._inside(step, is_down)
        down, ways = split_ways(step, is_down=is_down)
        labelled = [way for way in down if is_labelled(way)]
        return [
            *self._heading(step, is_down),
            *self._notes(step, before_runs(step), self.setter.style(9.2), width),
            *self._lines(step, width, told),
            *(exit_row(self.setter, step, way, width, told.pages) for way in ways),
            *self._notes(step, after_runs(step), self.setter.note, width),
            *(down_row(self.setter, step, way, width, place) for place, way in enumerate(labelled)),
        ]

    def _heading(self, step: Step, is_down: bool) -> list[Piece]:
        if not step.heading:  # its number stands on a line of its own
            return [] if is_decision(step) else [Piece(self.setter.mm(NUMBER), ())]
        role = Role.QUESTION if step.kind is Kind.QUESTION else Role.STEP
        width = self._inside(step, is_down) - self._hang(step, is_down)
        text = self.setter.text(step.heading, self.setter.head, width, role, step.of)
        text = self._level(text) if is_decision(step) else text
        return [self._beside_number(step, text, is_down)]

    def _beside_number(self, step: Step, piece: Piece, is_down: bool) -> Piece:
        """Move a piece right of the number, where the words below begin under the number."""
        items = piece.at(self._hang(step, is_down), 0.0)
        height = max(piece.height, self.setter.mm(NUMBER))
        return Piece(height, items, piece.over, piece.word)

    def _lines(self, step: Step, width: float, told: Told) -> list[Piece]:
        found: list[Piece] = []
        for place, line in enumerate(step.lines):
            found += self._cautions(step, place, width, told)
            text = line_runs(line)
            found.append(self.setter.text(text, self.setter.body, width, Role.LINE, step.of))
        return found if step.lines else self._cautions(step, 0, width, told)

    def _cautions(self, step: Step, place: int, width: float, told: Told) -> list[Piece]:
        return [
            caution(self.setter, each, width, told.cautions.get(each.anywhere, 0))
            for each in step.cautions
            if each.before == place
        ]

    def _notes(
        self, step: Step, texts: Sequence[tuple[Run, ...]], style: Style, width: float
    ) -> list[Piece]:
        return [self.setter.text(runs, style, width, Role.NOTE, step.of) for runs in texts]

    def _assembled(self, step: Step, pieces: Sequence[Piece], is_down: bool) -> Block:
        pad = self.setter.mm(PAD)
        words = stacked(pieces, self.setter.mm(GAP))
        least = self.setter.mm(DIAMOND if is_decision(step) else NUMBER)
        # A step whose heading has marks on its capitals stands a little lower in its box.
        style = self.setter.head
        higher = 0.0 if is_decision(step) else above(step.heading) * style.size * MM_PER_POINT
        height = max(words.height + higher, least) + 2 * pad
        items = (*self._symbol(step, height), *words.at(self._left(step, is_down), pad + higher))
        piece = Piece(height, items, words.over, words.word)
        if is_decision(step):
            return Block(piece, pad, pad + self.setter.mm(DIAMOND))
        return Block(piece, 0.0, height)

    def _level(self, text: Piece) -> Piece:
        """Words as high as the diamond at least, in the middle of it."""
        height = max(text.height, self.setter.mm(DIAMOND))
        return Piece(height, text.at(0.0, (height - text.height) / 2), text.over, text.word)

    def _left(self, step: Step, is_down: bool) -> float:
        """Where words begin: right of the arrow that runs down from a diamond, if one does."""
        if is_decision(step) and is_down:
            return self.setter.mm(RAIL)
        return self.setter.mm(PAD + (BARS if step.kind is Kind.HANDOVER else 0.0))

    def _inside(self, step: Step, is_down: bool) -> float:
        bars = BARS if step.kind is Kind.HANDOVER else 0.0
        return self.width - self._left(step, is_down) - self.setter.mm(PAD + bars)

    def _hang(self, step: Step, is_down: bool) -> float:
        """How much further right than the words the heading stands, beside the number."""
        bars = BARS if step.kind is Kind.HANDOVER else 0.0
        return self.setter.mm(RAIL + bars) - self._left(step, is_down)

    def _symbol(self, step: Step, height: float) -> tuple[Item, ...]:
        mm, setter = self.setter.mm, self.setter
        if is_decision(step):
            style, side = setter.style(10, Weight.BOLD), mm(DIAMOND)
            ground = Shape(
                Outline.PANEL, 0.0, 0.0, self.width, height, Ink.RULE, Ink.DECISION_WASH, 0.2
            )
            x = (mm(RAIL) - side) / 2
            symbol = Shape(Outline.DECISION, x, mm(PAD), side, side, of=step.of, weight=mm(0.45))
            number = setter.centred(str(step.number), style, symbol, Role.NUMBER, step.of)
            return (ground, *number)
        outline = box(OUTLINES[step.kind], self.width, height, mm(0.35), step.of)
        left = self._left(step, False)
        tag = Shape(Outline.PANEL, left, mm(PAD), self._hang(step, False), mm(NUMBER))
        _first, text = setter.centred(str(step.number), setter.head, tag, Role.NUMBER, step.of)
        return (outline, text)


def is_decision(step: Step) -> bool:
    """Return whether a step stands as a diamond."""
    return step.kind in (Kind.QUESTION, Kind.BRANCH)
