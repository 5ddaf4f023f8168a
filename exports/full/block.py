"""A step as a block: its ISO 5807 symbol with its number, its words, its ways out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from chamberwise.exports.full.cautions import caution
from chamberwise.exports.full.content import Kind, Step
from chamberwise.exports.full.exits import down_row, exit_row, is_labelled, split_ways
from chamberwise.exports.full.piece import Piece, Setter, box, stacked
from chamberwise.exports.full.words import after_runs, before_runs, line_runs, marks
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Item, Outline, Role, Shape, Weight

RAIL = 15.0
"""Width of the strip at the left in which numbers stand and arrows run down, at body type 10."""
DIAMOND = 12.0
PAD = 2.4
LANE = 5.0
GAP = 1.6
BESIDE = 165.0
"""From this width on the ways out stand beside the words, below it beneath them."""

OUTLINES = {
    Kind.ACTION: Outline.PROCESS,
    Kind.HANDOVER: Outline.PREDEFINED_PROCESS,
    Kind.OUTCOME: Outline.TERMINATOR,
}


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

    def block(self, step: Step, *, is_down: bool, pages: Mapping[int, int]) -> Block:
        """Return a step; `is_down` when an arrow leads from it straight down to the next."""
        mm = self.setter.mm
        if self.width >= mm(BESIDE):
            room = self.width - mm(RAIL + LANE + 2 * PAD)
            main, side = room * 0.53, room * 0.47
            found = self._assembled(
                step,
                self._main(step, main, is_down),
                [
                    *self._before(step, side),
                    *self._exits(step, side, is_down, pages),
                    *self._after(step, side),
                ],
                main,
            )
            if not found.piece.over:
                return found
        pieces, width = self._one_column(step, is_down, pages)
        return self._assembled(step, pieces, [], width)

    def chunks(self, step: Step, height: float, pages: Mapping[int, int]) -> list[Block]:
        """Return a step that is longer than a column in parts, cut between its lines."""
        pieces, width = self._one_column(step, False, pages)
        room = height - 2 * self.setter.mm(PAD + 6.0)
        parts: list[list[Piece]] = [[]]
        for piece in pieces:
            if parts[-1] and self._height([*parts[-1], piece]) > room:
                parts.append([self._continued(step, width)])
            parts[-1].append(piece)
        return [self._assembled(step, part, [], width) for part in parts]

    def _height(self, pieces: Sequence[Piece]) -> float:
        return stacked(pieces, self.setter.mm(GAP)).height

    def _continued(self, step: Step, width: float) -> Piece:
        return self.setter.text("(continued)", self.setter.note, width, Role.NOTE)

    def _one_column(
        self, step: Step, is_down: bool, pages: Mapping[int, int]
    ) -> tuple[list[Piece], float]:
        width = self.width - self.setter.mm(RAIL + PAD)
        heading, *rest = self._main(step, width, False)
        down = self._down(step, width, is_down)
        return [
            heading,
            *self._before(step, width),
            *rest,
            *self._exits(step, width, is_down, pages),
            *self._after(step, width),
            *down,
        ], width

    def _main(self, step: Step, width: float, is_down: bool) -> list[Piece]:
        role = Role.QUESTION if step.kind is Kind.QUESTION else Role.STEP
        setter, found = self.setter, []
        if step.heading:
            text = setter.text(step.heading, setter.head, width, role, step.of)
            found.append(self._level(text) if is_decision(step) else text)
        for place, line in enumerate(step.lines):
            found += self._cautions(step, place, width)
            found.append(setter.text(line_runs(line), setter.body, width, Role.LINE, step.of))
        if not step.lines:
            found += self._cautions(step, 0, width)
        return [*found, *self._down(step, width, is_down)]

    def _cautions(self, step: Step, place: int, width: float) -> list[Piece]:
        told = [each for each in step.cautions if each.before == place]
        return [
            caution(
                self.setter, each.signal, each.harm, each.instead, marks(each.sources)[1:], width
            )
            for each in told
        ]

    def _down(self, step: Step, width: float, is_down: bool) -> list[Piece]:
        ways, _ = split_ways(step, is_down=is_down)
        return [
            down_row(self.setter, step, way, width, place)
            for place, way in enumerate(each for each in ways if is_labelled(each))
        ]

    def _before(self, step: Step, width: float) -> list[Piece]:
        style = self.setter.style(9.2)
        return [
            self.setter.text(runs, style, width, Role.NOTE, step.of) for runs in before_runs(step)
        ]

    def _exits(
        self, step: Step, width: float, is_down: bool, pages: Mapping[int, int]
    ) -> list[Piece]:
        _, ways = split_ways(step, is_down=is_down)
        return [exit_row(self.setter, step, way, width, pages) for way in ways]

    def _after(self, step: Step, width: float) -> list[Piece]:
        return [
            self.setter.text(runs, self.setter.note, width, Role.NOTE, step.of)
            for runs in after_runs(step)
        ]

    def _assembled(
        self, step: Step, main: Sequence[Piece], side: Sequence[Piece], width: float
    ) -> Block:
        mm = self.setter.mm
        pad, gap = mm(PAD), mm(GAP)
        words = stacked(main, gap)
        beside = stacked(side, gap)
        least = mm(DIAMOND) if is_decision(step) else mm(6.0)
        height = max(words.height, beside.height, least) + 2 * pad
        extent = width + mm(RAIL + PAD)
        items: list[Item] = [*self._symbol(step, extent, height)]
        items += words.at(mm(RAIL), pad)
        items += beside.at(extent + mm(LANE), pad)
        worst = words if words.over >= beside.over else beside
        piece = Piece(height, tuple(items), worst.over, worst.word)
        if is_decision(step):
            return Block(piece, pad, pad + mm(DIAMOND))
        return Block(piece, 0.0, height)

    def _level(self, text: Piece) -> Piece:
        """Words as high as the diamond at least, in the middle of it."""
        height = max(text.height, self.setter.mm(DIAMOND))
        return Piece(height, text.at(0.0, (height - text.height) / 2), text.over, text.word)

    def _symbol(self, step: Step, extent: float, height: float) -> tuple[Item, ...]:
        mm, setter = self.setter.mm, self.setter
        style = setter.style(10, Weight.BOLD)
        if is_decision(step):
            side = mm(DIAMOND)
            ground = Shape(
                Outline.PANEL, 0.0, 0.0, self.width, height, Ink.RULE, Ink.DECISION_WASH, 0.2
            )
            x = (mm(RAIL) - side) / 2
            symbol = Shape(Outline.DECISION, x, mm(PAD), side, side, of=step.of, weight=mm(0.45))
            number = setter.centred(str(step.number), style, symbol, Role.NUMBER, step.of)
            return (ground, *number)
        outline = box(OUTLINES[step.kind], extent, height, mm(0.35), step.of)
        tag = Shape(Outline.PANEL, 0.0, mm(PAD), mm(RAIL), mm(5.2))
        _, text = setter.centred(str(step.number), setter.head, tag, Role.NUMBER, step.of)
        return (outline, text)


def is_decision(step: Step) -> bool:
    """Return whether a step stands as a diamond."""
    return step.kind in (Kind.QUESTION, Kind.BRANCH)
