"""The rows of the main line, one below the other, in as many columns as there are."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Arrow, Item
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Row, Wall
from chamberwise.exports.wall.pen import Pen
from chamberwise.exports.wall.rows import Drawn, down, row
from chamberwise.exports.wall.stops import circle

SPINE = 1.75


class Flow:
    """The rows drawn at a width, to be set in columns."""

    def __init__(self, pen: Pen, content: Wall, width: float) -> None:
        self.pen, self.content, self.width = pen, content, width
        self.drawn = [row(pen, one, width, f"{content.pathway}/{one.step}") for one in content.rows]

    def heights(self) -> list[float]:
        """Return how far down each row reaches to the next one."""
        reaches = [
            made.piece.height + _onward(self.pen, self.content, place, self.drawn, self.width)[1]
            for place, made in enumerate(self.drawn)
        ]
        above = _opened(self.pen, self.content, self.drawn, self.width).height
        return [reach + above * (not place) for place, reach in enumerate(reaches)]

    def filled(self, rooms: Sequence[float]) -> list[Piece] | None:
        """Return columns of some heights, each as full as can be; `None` where rows are left."""
        pieces: list[Piece] = []
        place = 0
        for room in rooms:
            piece, after = self._column(place, len(self.drawn), room)
            if after == place and place < len(self.drawn):
                return None
            pieces.append(piece)
            place = after
            if place == len(self.drawn):
                return pieces
        return None

    def parted(self, starts: Sequence[int], rooms: Sequence[float]) -> list[Piece] | None:
        """Return columns that begin at some rows; `None` where one needs more room than it has."""
        pieces = []
        for (start, end), room in zip(pairwise([*starts, len(self.drawn)]), rooms, strict=False):
            piece, after = self._column(start, end, room)
            if after != end:
                return None
            pieces.append(piece)
        return pieces

    def _column(self, start: int, end: int, room: float) -> tuple[Piece, int]:
        """Return the column of some rows that find room, and the place of the first that does not.

        Where it ends, the number of the next row says where it goes on.
        """
        pen, content, drawn = self.pen, self.content, self.drawn
        opening = _opened(pen, content, drawn, self.width)
        if start or not opening.height:
            return _column(pen, content, drawn, start, end, room)
        piece, after = _column(pen, content, drawn, start, end, room - opening.height)
        arrow, *label = opening.items
        items = (*label, *piece.at(0, opening.height), arrow)
        return Piece(items, self.width, piece.height + opening.height), after


def _opened(pen: Pen, content: Wall, drawn: Sequence[Drawn], width: float) -> Piece:
    """Return the way from the first actions to the first row, where steps are left out on it."""
    if content.opening is None or not drawn:
        return Piece((), width, 0.0)
    below, of = drawn[0], f"{content.pathway}/{content.rows[0].step}"
    label = down(pen, content.opening, width * pen.left, of)
    start = pen.em(0.1)
    reach = label.height + pen.em(1.0)
    ways = ((below.middle, start), (below.middle, reach + below.begins))
    arrow = Arrow(ways, pen.line(SPINE), is_dashed=True, of=of)
    return Piece((arrow, *label.at(below.middle + pen.em(0.9), start)), width, reach)


def _column(
    pen: Pen, content: Wall, drawn: Sequence[Drawn], place: int, end: int, room: float
) -> tuple[Piece, int]:
    """Return the rows from a place on that find room, and the place of the first that does not."""
    width = drawn[place].piece.width if place < len(drawn) else 0.0
    items: list[Item] = []
    arrows: list[Item] = []  # above all grounds
    y, deepest = 0.0, 0.0
    while place < end:
        made = drawn[place]
        turned, reach = _turned(pen, content, place, made)
        onward, after = _onward(pen, content, place, drawn, width)
        is_end = place + 1 == len(drawn)
        if y + (made.piece.height if is_end else reach) > room:
            break
        goes_on = is_end or (
            place + 1 < end
            and y + made.piece.height + after + _least(pen, content, drawn, place) <= room
        )
        placed = [moved(item, 0, y) for item in (onward if goes_on else turned)]
        items += [*made.piece.at(0, y), *placed[1:]]
        arrows += placed[:1]
        deepest = y + (made.piece.height if goes_on else reach)
        y += made.piece.height + after
        place += 1
        if not goes_on:
            break
    return Piece((*items, *arrows), width, deepest), place


def _least(pen: Pen, content: Wall, drawn: Sequence[Drawn], place: int) -> float:
    """Return the room that the next row needs, with the way on from it at the foot of a column."""
    below = drawn[place + 1]
    if place + 2 == len(drawn):
        return below.piece.height
    return _turned(pen, content, place + 1, below)[1]


def _turned(pen: Pen, content: Wall, place: int, made: Drawn) -> tuple[list[Item], float]:
    """Return the way on at the foot of a column, and how far down it reaches.

    It is the number of the row that heads the next column.
    """
    one = content.rows[place]
    if one.down is None:
        return [], made.piece.height
    of = f"{content.pathway}/{one.step}"
    end = circle(pen, one.number + 1, is_row=True, of=of)
    label = down(pen, one.down, _beside(pen, one, made.piece.width), of)
    reach = made.bottom + max(pen.em(0.9), label.height + pen.em(0.5))
    ways = ((made.middle, made.ends), (made.middle, reach))
    items = [
        Arrow(ways, pen.line(SPINE), is_dashed=bool(one.down.via), of=of),
        *end.at(made.middle - end.width / 2, reach),
        *label.at(made.middle + pen.em(0.9), made.bottom + pen.em(0.3)),
    ]
    return items, max(reach + end.height, made.piece.height)


def _onward(
    pen: Pen, content: Wall, place: int, drawn: Sequence[Drawn], width: float
) -> tuple[list[Item], float]:
    """Return the arrow to the next row with what stands beside it, and the gap between the two."""
    one, made = content.rows[place], drawn[place]
    if place + 1 == len(drawn) or one.down is None:
        return [], pen.em(1.4)
    of = f"{content.pathway}/{one.step}"
    label = down(pen, one.down, _beside(pen, one, width), of)
    below = drawn[place + 1]
    room = made.piece.height - made.bottom + below.top
    gap = max(pen.em(0.8), label.height + pen.em(0.9) - room)
    start = made.piece.height + gap
    ways = ((made.middle, made.ends), (made.middle, start + below.begins))
    spare = room + gap - label.height
    beside = label.at(made.middle + pen.em(0.9), made.bottom + min(spare / 2, pen.em(0.45)))
    arrow = Arrow(ways, pen.line(SPINE), is_dashed=bool(one.down.via), of=of)
    return [arrow, *beside], gap


def _beside(pen: Pen, one: Row, width: float) -> float:
    """Return the room beside the arrow down: the whole width where no way leads to the side."""
    return width * pen.left if one.sides else width
