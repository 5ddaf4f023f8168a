"""Steps one below the other over columns and pages, with an arrow down wherever one can be."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

from chamberwise.exports.control.frame import Body
from chamberwise.exports.full.block import RAIL, Block, Blocks
from chamberwise.exports.full.content import FullPathway, Step
from chamberwise.exports.full.exits import goes_next
from chamberwise.exports.full.piece import Piece
from chamberwise.exports.paper.sheet import Arrow, Item, Outline, Role, Shape, Weight
from chamberwise.exports.printing.order import UnfitError

GAP = 6.5
"""Between two steps: room for an arrow and its head."""
LANE = 8.0
"""Between two columns."""
LEAST_COLUMN = 118.0
Pages: TypeAlias = Mapping[int, int]
Drawn: TypeAlias = Callable[[Pages], tuple[Item, ...]]


class Put(NamedTuple):
    """Items on a page, drawn once it is known on which page each step stands."""

    page: int
    drawn: Drawn


class Trunk(NamedTuple):
    """Where an arrow down begins, and its name."""

    x: float
    y: float
    of: str


@dataclass(slots=True)
class Flow:
    """Fills columns of pages from the top."""

    body: Body
    blocks: Blocks
    page: int = 1
    column: int = 0
    y: float = 0.0
    puts: list[Put] = field(default_factory=list)
    pages: dict[int, int] = field(default_factory=dict)
    trunk: Trunk | None = None
    tops: dict[int, float] = field(default_factory=dict)
    known: dict[tuple[int, bool], Block] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.y = self.body.y

    @property
    def x(self) -> float:
        """The left edge of the column."""
        return self.body.x + self.column * (self.blocks.width + self._mm(LANE))

    @property
    def top(self) -> float:
        """Where the columns of this page begin."""
        return self.tops.get(self.page, self.body.y)

    def wide(self, piece: Piece, gap: float) -> None:
        """Set a piece across all columns, at the head of a page or below another such."""
        self._put(piece, self.y)
        self.y += piece.height + gap
        self.tops[self.page] = self.y

    def plain(self, pieces: Sequence[Piece], gap: float) -> None:
        """Set pieces one below the other; the first is a heading and stays with the second."""
        for place, piece in enumerate(pieces):
            self._check("The lists", piece)
            follows = pieces[1].height + gap if place == 0 and len(pieces) > 1 else 0.0
            self._make_room(piece.height + follows)
            self._put(piece, self.y)
            self.y += piece.height + gap

    def break_page(self) -> None:
        """Go on at the top of a page, unless nothing stands on this one yet."""
        if self.column or self.y > self.body.y:
            self.page, self.column, self.y = self.page + 1, 0, self.body.y

    def steps(self, content: FullPathway) -> None:
        """Set every step."""
        if self.y > self.top:
            self.y += self._mm(GAP)
        for place, step in enumerate(content.steps):
            leading = self.leading(content, place)
            if self._fits_column(step):
                above = sum(each.height + self._mm(GAP) for each in leading)
                self._make_room(above + self._need(step))
                self._lead(leading, step)
                self._step(content, place)
            else:
                self._make_room(self.body.height)
                self._lead(leading, step)
                self._long(step)

    def _step(self, content: FullPathway, place: int) -> None:
        step, y, x = content.steps[place], self.y, self.x
        down = self._block(step, is_down=True)
        is_down = self._goes_down(content, place, y + down.height)
        block = self._block(step, is_down=is_down)
        self._check(f"Step {step.number}", block.piece)
        self.pages[step.number] = self.page

        def drawn(pages: Pages) -> tuple[Item, ...]:
            return self.blocks.block(step, is_down=is_down, pages=pages).piece.at(x, y)

        self.puts.append(Put(self.page, drawn))
        self._arrive(y + block.top)
        self.y = y + block.height + self._mm(GAP)
        if is_down:
            first = next(way for way in step.ways if goes_next(step, way))
            self.trunk = Trunk(x + self._mm(RAIL / 2), y + block.foot, f"{step.of}/{first.id}")

    def _goes_down(self, content: FullPathway, place: int, bottom: float) -> bool:
        step = content.steps[place]
        if not any(goes_next(step, way) for way in step.ways):
            return False
        following = content.steps[place + 1]
        if not self._fits_column(following):
            return False
        gap = self._mm(GAP)
        above = sum(each.height + gap for each in self.leading(content, place + 1))
        return bottom + gap + above + self._need(following) <= self.body.bottom

    def _need(self, step: Step) -> float:
        """Room for either form of a step: with an arrow down, and with every way a row."""
        return max(self._block(step, is_down=each).height for each in (True, False))

    def _fits_column(self, step: Step) -> bool:
        return self._need(step) <= self._column_height()

    def _block(self, step: Step, *, is_down: bool) -> Block:
        key = (step.number, is_down)
        if key not in self.known:
            self.known[key] = self.blocks.block(step, is_down=is_down, pages={})
        return self.known[key]

    def _column_height(self) -> float:
        return self.body.height - self._mm(3 * GAP + 16.0)

    def _long(self, step: Step) -> None:
        self.pages[step.number] = self.page
        for number, chunk in enumerate(self._chunks(step, {})):
            self._check(f"Step {step.number}", chunk.piece)
            if self.y + chunk.height > self.body.bottom:
                self._next_column()
            self.puts.append(Put(self.page, self._chunk(step, number, self.x, self.y)))
            self._arrive(self.y + chunk.top)
            self.y += chunk.height + self._mm(GAP)

    def _chunk(self, step: Step, number: int, x: float, y: float) -> Drawn:
        return lambda pages: self._chunks(step, pages)[number].piece.at(x, y)

    def _chunks(self, step: Step, pages: Pages) -> list[Block]:
        return self.blocks.chunks(step, self._column_height(), pages)

    def leading(self, content: FullPathway, place: int) -> list[Piece]:
        """What stands above a step: the title of a phase that begins, and the start."""
        setter, step = self.blocks.setter, content.steps[place]
        found = []
        if place == 0 or content.steps[place - 1].phase != step.phase:
            style = setter.style(15, Weight.BOLD)
            left = setter.mm(RAIL)
            text = setter.text(step.phase, style, self.blocks.width - left, Role.HEADING)
            found.append(Piece(text.height, text.at(left, 0.0), text.over, text.word))
        if step.number == content.start:
            found.append(self._start())
        return found

    def _start(self) -> Piece:
        setter = self.blocks.setter
        pill = Shape(Outline.TERMINATOR, 0.0, 0.0, setter.mm(RAIL), setter.mm(7.0), of="start")
        style = setter.style(9.2, Weight.BOLD)
        return Piece(pill.height, setter.centred("Start", style, pill, Role.NUMBER, "start"))

    def _lead(self, leading: Sequence[Piece], step: Step) -> None:
        for piece in leading:
            self._check(f"Step {step.number}", piece)
            self._put(piece, self.y)
            is_start = any(getattr(each, "of", "") == "start" for each in piece.items)
            if is_start and self.trunk is None:
                middle = self.x + self._mm(RAIL / 2)
                self.trunk = Trunk(middle, self.y + piece.height, "start")
            self.y += piece.height + self._mm(GAP)

    def _arrive(self, y: float) -> None:
        if self.trunk is None:
            return
        points = ((self.trunk.x, self.trunk.y), (self.trunk.x, y))
        arrow = Arrow(points, self._mm(0.5), of=self.trunk.of)
        self.puts.append(Put(self.page, lambda _: (arrow,)))
        self.trunk = None

    def _put(self, piece: Piece, y: float) -> None:
        items = piece.at(self.x, y)
        self.puts.append(Put(self.page, lambda _: items))

    def _make_room(self, height: float) -> None:
        """Go on to the next column with room, or to one that is whole and as good as any."""
        while self.y + height > self.body.bottom and max(self.y, self.top) > self.body.y:
            self._next_column()

    def _next_column(self) -> None:
        columns = column_count(self.body.width, self.blocks.setter.scale)
        self.column += 1
        if self.column == columns:
            self.page, self.column = self.page + 1, 0
        self.y = self.top

    def _check(self, where: str, piece: Piece) -> None:
        if piece.over > 0.01:
            word = max(piece.word.split(), key=len)
            raise UnfitError(
                f"{where}: the word “{word}” is wider than its column.",
                ("Larger paper.", "Shorter words.", "A shorter reading distance."),
            )

    def _mm(self, length: float) -> float:
        return self.blocks.setter.mm(length)


def column_count(width: float, scale: float) -> int:
    """Return how many columns stand side by side."""
    return max(1, int((width + LANE * scale) // ((LEAST_COLUMN + LANE) * scale)))
