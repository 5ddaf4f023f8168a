"""The graph of a wall chart rebuilt from its PDF alone: from lines, areas and words.

A box belongs to an arrow that touches it; words to the smallest area round them; a label to the
line that it stands in. Knows how a chart looks to somebody before it, not how it was made.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from math import dist

from chamberwise.exports.audit.geometry import Box, Point, around
from chamberwise.exports.audit.printed.content import Leaf, Path, Stretch
from chamberwise.exports.audit.printed.first import leaves

TOUCH = 0.6
"""Millimetres."""
ROUND = 13
"""Points of a circle: four curves."""
WASH = "#e4eff9"
BLACK = "#000000"
MM = 25.4 / 72


@dataclass(frozen=True)
class Way:
    """A way to the side: its label, the words of each box on it, and the number where it ends."""

    label: str
    boxes: tuple[str, ...]
    ends: str
    """`row 7`, `full 17`, or nothing."""


@dataclass
class Row:
    """A row by its number: its words, its ways to the side, and how it goes on."""

    text: str
    ways: set[Way] = field(default_factory=set)
    down: tuple[str, str, str] | None = None
    """Its label, the step that is done first, and the row it leads to."""


@dataclass(frozen=True, eq=False)
class _Node:
    box: Box
    words: tuple[Stretch, ...]
    is_circle: bool
    is_dark: bool
    number: str = ""


@dataclass(frozen=True, eq=False)
class _Arrow:
    tail: Point
    tip: Point

    @property
    def is_down(self) -> bool:
        return abs(self.tail[0] - self.tip[0]) < TOUCH


def read_back(pdf: bytes) -> dict[int, Row]:
    """Return every row by its number. Raises `ValueError` where a number stands twice."""
    rows: dict[int, Row] = {}
    for leaf in leaves(pdf):
        for number, row in _Page(leaf).rows():
            if number in rows:
                raise ValueError(f"row {number} stands twice")
            rows[number] = row
    return rows


def squashed(text: str) -> str:
    """Return words without what a line end takes away."""
    return "".join(text.split())


class _Page:
    def __init__(self, leaf: Leaf) -> None:
        self.words = leaf.stretches
        self.lines = [each for each in leaf.paths if not each.fill and len(each.points) == 2]
        self.nodes = [*_nodes(leaf.paths, leaf.stretches)]
        self.arrows = [*_arrows(leaf.paths, self.lines)]

    def rows(self) -> Iterator[tuple[int, Row]]:
        for node in self.nodes:
            if not node.number:
                continue
            row = Row(_text(node.words))
            for arrow in self.arrows:
                if self._source(arrow) is not node:
                    continue
                if arrow.is_down:
                    row.down = self._down(node, arrow)
                else:
                    row.ways.add(self._way(arrow))
            yield int(node.number), row

    def _source(self, arrow: _Arrow) -> _Node | None:
        """Return what an arrow comes out of, if need be along the line that several leave from."""
        found = self._at(arrow.tail)
        if found or arrow.is_down:
            return found
        x, y = self._start(arrow)
        found = self._at((x, y))
        if found:
            return found
        for line in self.lines:
            (at, top), (end, bottom) = line.points[0], line.points[-1]
            if abs(at - end) > 0.1 or abs(at - x) > 0.1 or not top < y < bottom + 0.1:
                continue
            for first in self._level(top):
                if first[0] - 0.1 <= x <= first[1] + 0.1:
                    return self._at((first[0], top))
        return None

    def _level(self, y: float) -> Iterator[tuple[float, float]]:
        """Yield from where to where each line goes that lies level at a height."""
        for line in self.lines:
            (left, one), (right, other) = sorted(line.points)
            if abs(one - y) < 0.1 and abs(other - y) < 0.1:
                yield left, right

    def _start(self, arrow: _Arrow) -> Point:
        """Return where the line begins that an arrow goes on behind the words in it."""
        x, y = arrow.tail
        before = [each for each in self._level(y) if each[1] < x - 0.1]
        return (max(before, key=lambda each: each[1])[0], y) if before else (x, y)

    def _at(self, point: Point) -> _Node | None:
        near = [node for node in self.nodes if node.box.grown(TOUCH).holds(point)]
        return min(near, key=lambda node: node.box.area) if near else None

    def _way(self, arrow: _Arrow) -> Way:
        boxes: list[str] = []
        here = self._at(arrow.tip)
        met: list[_Node] = []
        while here is not None and not here.is_circle and here not in met:
            met.append(here)
            boxes.append(squashed(_text(here.words)))
            onward = [each for each in self.arrows if self._at(each.tail) is here]
            here = self._at(onward[0].tip) if len(onward) == 1 else None
        ends = "" if here is None else _numbered(here)
        return Way(squashed(self._label(arrow)), tuple(boxes), ends)

    def _label(self, arrow: _Arrow) -> str:
        return _text(self._standing_in(arrow))

    def _standing_in(self, arrow: _Arrow) -> list[Stretch]:
        """Return the lines of words that stand in the line of an arrow."""
        x, y = arrow.tail
        left = max((end for _start, end in self._level(y) if end < x - 0.1), default=x)
        within = [
            each
            for each in self.words
            if each.box.left > left - TOUCH and each.box.right < x + TOUCH
        ]
        within.sort(key=lambda each: abs(each.box.centre[1] - y))
        taken = [each for each in within[:1] if abs(each.box.centre[1] - y) < each.size * MM]
        for each in within[1:] if taken else ():
            reach = 1.35 * each.size * MM
            if any(abs(each.origin[1] - one.origin[1]) < reach for one in taken):
                taken.append(each)
        return taken

    def _down(self, node: _Node, arrow: _Arrow) -> tuple[str, str, str]:
        target = self._at(arrow.tip)
        x = arrow.tail[0]
        leaves = any(self._source(each) is node for each in self.arrows if not each.is_down)
        edge = self._edge(x) if leaves else node.box.right
        beside = Box(x, node.box.bottom, edge, arrow.tip[1])
        circles = [
            each
            for each in self.nodes
            if each.is_circle and each is not target and beside.holds(each.box.centre)
        ]
        level = (each for each in self.arrows if not each.is_down and not self._at(each.tail))
        aside = [each for other in level for each in self._standing_in(other)]
        words = [
            each
            for each in self.words
            if beside.holds(each.box.centre)
            and each not in aside
            and each.box.right < edge
            and not any(other.box.holds(each.box.centre) for other in self.nodes)
        ]
        told = squashed(_text(words)).removesuffix("firstdo")
        via = _numbered(circles[0]) if circles else ""
        leads = "" if target is None else target.number or _numbered(target)
        return told, via, leads.removeprefix("row ")

    def _edge(self, x: float) -> float:
        """Return where the ways to the side begin, of the rows on one main line."""
        rows = ((arrow, self._source(arrow)) for arrow in self.arrows if not arrow.is_down)
        starts = [
            self._start(arrow)[0]
            for arrow, node in rows
            if node and node.number and node.box.left - 1 < x < node.box.left + 20
        ]
        return min(starts, default=x + 80)


def _nodes(paths: Iterable[Path], words: tuple[Stretch, ...]) -> Iterator[_Node]:
    # An outline with round corners is painted on its own, after its ground.
    drawn = [each for each in paths if each.stroke and not each.fill and len(each.points) > 2]
    areas = [
        each
        for each in paths
        if each.fill and (each.stroke or any(_is_round(each, other) for other in drawn))
    ]
    washes = [each for each in paths if each.fill == WASH]
    found: list[tuple[Box, Box, bool, bool]] = []
    for area in areas:
        is_circle = len(area.points) == ROUND and abs(area.box.width - area.box.height) < 0.3
        around_it = area.box
        for wash in washes:
            x, y = area.box.centre
            if abs(wash.box.left - x) < TOUCH and wash.box.top < y < wash.box.bottom:
                around_it = around([area.box, wash.box])
        found.append((around_it, area.box, is_circle, area.fill == BLACK))
    for box, own, is_circle, is_dark in found:
        held = [each for each in words if box.holds(each.box.centre)]
        if not held:
            continue  # the key's signs
        number, rest = _number(held, own, box)
        yield _Node(box, tuple(rest), is_circle, is_dark, "" if is_circle else number)


def _is_round(ground: Path, outline: Path) -> bool:
    is_as_long = len(ground.points) == len(outline.points)
    pairs = zip(ground.box, outline.box, strict=True)
    return is_as_long and all(abs(one - other) < 2 * outline.weight for one, other in pairs)


def _number(held: list[Stretch], symbol: Box, whole: Box) -> tuple[str, list[Stretch]]:
    """Return the number that stands first in a row, and its other words."""
    first = min(held, key=lambda each: each.box.left)
    is_first = first.text.strip().isdigit() and (symbol != whole or len(held) > 1)
    if not is_first:
        return "", held
    return first.text.strip(), [each for each in held if each is not first]


def _arrows(paths: Iterable[Path], lines: list[Path]) -> Iterator[_Arrow]:
    heads = [each for each in paths if each.fill == BLACK and not each.stroke]
    for head in heads:
        if len(head.points) != 4:
            continue
        tip = head.points[0]
        near = [line for line in lines if dist(line.points[-1], tip) < 5 * line.weight]
        if near:
            line = min(near, key=lambda line: dist(line.points[-1], tip))
            yield _Arrow(line.points[0], tip)


def _numbered(circle: _Node) -> str:
    kind = "row" if circle.is_dark else "full"
    return f"{kind} {_text(circle.words).strip()}"


def _text(words: Iterable[Stretch]) -> str:
    ordered = sorted(words, key=lambda each: (round(each.origin[1], 1), each.box.left))
    return " ".join(each.text.strip() for each in ordered)
