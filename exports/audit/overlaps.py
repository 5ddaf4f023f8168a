"""What lies over what on a page."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.flow import box_of, outline_of
from chamberwise.exports.audit.geometry import Box, round_points, runs_through, segments
from chamberwise.exports.audit.rule import Where
from chamberwise.exports.audit.subject import Side
from chamberwise.exports.audit.tangle import on_one_another
from chamberwise.exports.paper.sheet import Arrow, Item, Shape

TOUCH = 0.05
"""Millimetres that may be shared before it counts."""
DEPTH = 0.3


class Overlap(NamedTuple):
    """Two things in one place."""

    what: str
    where: Where


class Set(NamedTuple):
    """A printed line of text: which text it is of, what it covers, where it says so."""

    owner: int
    box: Box
    where: Where


def overlaps(side: Side) -> Iterator[Overlap]:
    """Yield everything on a page that lies over something else."""
    lines = set_lines(side)
    yield from _box_on_box(side)
    yield from _text_on_text(lines)
    yield from _arrow_on_box(side)
    yield from _arrow_on_text(side, lines)
    for (x, y), length in on_one_another(side.flow):
        yield Overlap(
            _("two arrows on one line for {length} mm").format(length=decimal(f"{length:.1f}")),
            Where(side.number, x, y),
        )


def set_lines(side: Side) -> list[Set]:
    """Return every printed line, those without a placed text as well."""
    found = [
        Set(owner, line.box, block.where._replace(x=line.box.left, y=line.box.top))
        for owner, block in enumerate(side.blocks)
        for line in block.lines
    ]
    for number, stretch in enumerate(side.strays, start=1):
        where = Where(side.number, stretch.box.left, stretch.box.top, stretch.text.strip())
        found.append(Set(-number, stretch.box, where))
    return found


def _box_on_box(side: Side) -> Iterator[Overlap]:
    for one, other in combinations(side.flow.nodes, 2):
        first, second = box_of(one), box_of(other)
        apart = not first.overlaps(second, TOUCH)
        if not (apart or first.contains(second) or second.contains(first)):
            yield Overlap(_("a box on a box"), Where(side.number, other.x, other.y, other.of))


def _text_on_text(lines: list[Set]) -> Iterator[Overlap]:
    open_lines: list[Set] = []
    for line in sorted(lines, key=lambda each: each.box.top):
        open_lines = [each for each in open_lines if each.box.bottom > line.box.top]
        for each in open_lines:
            if each.owner != line.owner and each.box.overlaps(line.box, TOUCH):
                yield Overlap(
                    _('words on the words "{text}"').format(text=each.where.text), line.where
                )
        open_lines.append(line)


def _arrow_on_box(side: Side) -> Iterator[Overlap]:
    for arrow in side.flow.arrows:
        room = round_points(arrow.points)
        for node in side.flow.nodes:
            # An arrow well inside a box is one of its ways out, printed in it beside its label.
            is_content = box_of(node).grown(-DEPTH).contains(room)
            outline = outline_of(node)
            parts = segments(arrow.points)
            if not is_content and any(runs_through(a, b, outline, DEPTH) for a, b in parts):
                where = Where(side.number, *arrow.points[0], arrow.of)
                yield Overlap(_('an arrow through the box "{of}"').format(of=node.of), where)


def _arrow_on_text(side: Side, lines: list[Set]) -> Iterator[Overlap]:
    for place, item in enumerate(side.page.items):
        if isinstance(item, Arrow) and item.points:
            over = [each for each in side.page.items[place:] if _covers(each)]
            room = round_points(item.points).grown(item.weight)
            for line in lines:
                is_near = room.overlaps(line.box)
                if is_near and _runs_on(item, line.box) and not _is_hidden(line.box, over):
                    yield Overlap(_("a line on words"), line.where)


def _runs_on(arrow: Arrow, box: Box) -> bool:
    wide = box.grown(arrow.weight / 2 - TOUCH)
    if wide.width <= 0 or wide.height <= 0:
        return False
    return any(runs_through(a, b, wide.corners) for a, b in segments(arrow.points))


def _covers(item: Item) -> bool:
    return isinstance(item, Shape) and item.ground.value != "none"


def _is_hidden(box: Box, over: list[Item]) -> bool:
    return any(isinstance(each, Shape) and box_of(each).contains(box) for each in over)
