"""Steps one below the other over columns and pages, with an arrow down wherever one can be."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import NamedTuple, TypeAlias

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Body
from chamberwise.exports.full.block import NOTHING, Block, Blocks, Told
from chamberwise.exports.full.content import Caution, FullPathway, Step
from chamberwise.exports.full.exits import RAIL, goes_next
from chamberwise.exports.full.piece import Piece
from chamberwise.exports.paper.sheet import Arrow, Item, Outline, Role, Shape, Weight
from chamberwise.exports.printing.unfit import UnfitError

GAP = 4.4
"""Between two steps: room for an arrow and its head."""
LANE = 5.0
"""Between two columns."""
START = 15.0
ANY = 10**6
LEAST_COLUMN = 86.0
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
    start: int = 0
    tops: dict[int, float] = field(default_factory=dict)
    cautions: dict[tuple[int, Caution], int] = field(default_factory=dict)
    """Which step tells a caution in full, by page."""
    symbols_left: dict[int, int] = field(default_factory=dict)
    """How many symbols a page may still take on; without an entry, any number."""

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
        if self.y + piece.height > self.body.bottom:
            self.break_page()
        self._put(piece, self.y)
        self.y += piece.height + gap
        self.tops[self.page] = self.y

    @property
    def is_fresh(self) -> bool:
        """Whether nothing stands on this page yet."""
        return not self.column and self.y <= self.body.y

    @property
    def left(self) -> float:
        """Height that is left below the last wide piece."""
        return self.body.bottom - self.y

    def plain(self, pieces: Sequence[Piece], gap: float) -> None:
        """Set pieces one below the other; the first is a heading and stays with the second."""
        if self.y > self.top:
            self.y += self._mm(GAP)
        for place, piece in enumerate(pieces):
            self.check(_("The lists"), piece)
            follows = pieces[1].height + gap if place == 0 and len(pieces) > 1 else 0.0
            self._make_room(partial(float, piece.height + follows))
            self._put(piece, self.y)
            self.y += piece.height + gap

    def break_page(self) -> None:
        """Go on at the top of a page, unless nothing stands on this one yet."""
        if not self.is_fresh:
            self.page, self.column, self.y = self.page + 1, 0, self.body.y

    def steps(self, content: FullPathway) -> None:
        """Set every step."""
        self.start = content.start
        if self.y > self.top:
            self.y += self._mm(GAP)
        for place, step in enumerate(content.steps):
            leading = self.leading(content, place)
            above = sum(each.height + self._mm(GAP) for each in leading)
            if self._fits_column(step, above):
                if not self._may_take(step):
                    self.break_page()
                self._make_room(partial(self._need, step, above))
                self._lead(leading, step)
                self._step(content, place)
            else:
                self._make_room(lambda: self.body.height)
                self._lead(leading, step)
                self._long(step)

    def _step(self, content: FullPathway, place: int) -> None:
        step, y, x = content.steps[place], self.y, self.x
        told = self._told(step)
        down = self._block(step, is_down=True)
        self._tell(step)
        self._count(step)
        is_down = self._goes_down(content, place, y + down.height)
        block = self.blocks.block(step, is_down=is_down, told=told)
        self.check(_("Step {number}").format(number=step.number), block.piece)
        self.pages[step.number] = self.page

        def drawn(pages: Pages) -> tuple[Item, ...]:
            full = Told(pages, told.cautions)
            return self.blocks.block(step, is_down=is_down, told=full).piece.at(x, y)

        self.puts.append(Put(self.page, drawn))
        self._arrive(y + block.top)
        self.y = y + block.height + self._mm(GAP)
        if is_down:
            first = next(way for way in step.ways if goes_next(step, way))
            self.trunk = Trunk(x + self._mm(RAIL / 2), y + block.foot, f"{step.of}/{first.id}")

    def _told(self, step: Step) -> Told:
        """Return which cautions of a step this page has told in full."""
        names = [each.anywhere for each in step.cautions]
        found = {name: self.cautions.get((self.page, name), step.number) for name in names}
        return Told({}, {name: at for name, at in found.items() if at != step.number})

    def _tell(self, step: Step) -> None:
        for each in step.cautions:
            self.cautions.setdefault((self.page, each.anywhere), step.number)

    def _may_take(self, step: Step) -> bool:
        """Return whether the symbols of a step are not too many for this page."""
        return self._symbols(step) <= self.symbols_left.get(self.page, ANY)

    def _count(self, step: Step) -> None:
        if self.page in self.symbols_left:
            self.symbols_left[self.page] -= self._symbols(step)

    def _symbols(self, step: Step) -> int:
        """The symbol of the step itself, and a circle for every way out."""
        return 1 + len(step.ways) + (step.number == self.start)

    def _goes_down(self, content: FullPathway, place: int, bottom: float) -> bool:
        step = content.steps[place]
        if not any(goes_next(step, way) for way in step.ways):
            return False
        following = content.steps[place + 1]
        gap = self._mm(GAP)
        above = sum(each.height + gap for each in self.leading(content, place + 1))
        if not self._fits_column(following, above) or not self._may_take(following):
            return False
        return bottom + gap + self._need(following, above) <= self.body.bottom

    def _need(self, step: Step, above: float) -> float:
        """Room on this page for either form of a step: an arrow down, or every way a row."""
        return above + max(self._block(step, is_down=each).height for each in (True, False))

    def _fits_column(self, step: Step, above: float) -> bool:
        full = [self.blocks.block(step, is_down=each).height for each in (True, False)]
        return above + max(full) <= self.body.height

    def _block(self, step: Step, *, is_down: bool) -> Block:
        return self.blocks.block(step, is_down=is_down, told=self._told(step))

    def _column_height(self) -> float:
        return self.body.height - self._mm(3 * GAP + 16.0)

    def _long(self, step: Step) -> None:
        self.pages[step.number] = self.page
        for number, chunk in enumerate(self._chunks(step, NOTHING)):
            self.check(_("Step {number}").format(number=step.number), chunk.piece)
            if self.y + chunk.height > self.body.bottom:
                self._next_column()
            self.puts.append(Put(self.page, self._chunk(step, number, self.x, self.y)))
            self._arrive(self.y + chunk.top)
            self.y += chunk.height + self._mm(GAP)

    def _chunk(self, step: Step, number: int, x: float, y: float) -> Drawn:
        return lambda pages: self._chunks(step, Told(pages, {}))[number].piece.at(x, y)

    def _chunks(self, step: Step, told: Told) -> list[Block]:
        return self.blocks.chunks(step, self._column_height(), told)

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
        pill = Shape(Outline.TERMINATOR, 0.0, 0.0, setter.mm(START), setter.mm(6.4), of="start")
        style = setter.style(10, Weight.BOLD)
        return Piece(pill.height, setter.centred(_("Start"), style, pill, Role.NUMBER, "start"))

    def _lead(self, leading: Sequence[Piece], step: Step) -> None:
        for piece in leading:
            self.check(_("Step {number}").format(number=step.number), piece)
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

    def _make_room(self, height: Callable[[], float]) -> None:
        """Go on to the next column with room, or to one that is whole and as good as any."""
        while self.y + height() > self.body.bottom and max(self.y, self.top) > self.body.y:
            self._next_column()

    def _next_column(self) -> None:
        columns = column_count(self.body.width, self.blocks.setter.scale)
        self.column += 1
        if self.column == columns:
            self.page, self.column = self.page + 1, 0
        self.y = self.top

    def check(self, where: str, piece: Piece) -> None:
        """Raise `UnfitError` where a word is wider than its room."""
        if piece.over > 0.01:
            word = max(piece.word.split(), key=len)
            raise UnfitError(
                _("{where}: the word “{word}” is wider than its column.").format(
                    where=where, word=word
                ),
                (_("Larger paper."), _("Shorter words."), _("A shorter reading distance.")),
            )

    def _mm(self, length: float) -> float:
        return self.blocks.setter.mm(length)


def column_count(width: float, scale: float) -> int:
    """Return how many columns stand side by side."""
    return max(1, int((width + LANE * scale) // ((LEAST_COLUMN + LANE) * scale)))
