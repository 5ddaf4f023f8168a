"""Bold type is the exception, and nothing is underlined."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.block import where_of
from chamberwise.exports.audit.printed.content import Path, Stretch
from chamberwise.exports.audit.rule import (
    NO_FAULT_WARNED,
    Mark,
    Measure,
    Rule,
    at_most,
    counted,
)
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.paper.sheet import Role, Weight

BELOW = 0.25
"""A line so many em below the baseline underlines."""
COVERS = 0.6


def _measure(subject: Subject) -> Iterator[Measure]:
    bold = every = 0
    for _where, block in subject.blocks():
        if block.role is Role.MARK:
            continue
        for run in block.text.runs:
            letters = len(run.text)
            every += letters
            bold += letters * (Weight.BOLD in (run.weight, block.text.style.weight))
    share = 100 * bold / every if every else 0.0
    yield Measure(
        share, told=_("{share} % of characters bold").format(share=decimal(f"{share:.0f}"))
    )
    for side in subject.sides:
        yield from _underlined(side)


def _underlined(side: Side) -> Iterator[Measure]:
    level = [
        path
        for path in side.leaf.paths
        if path.box.width > 2 and path.box.height < 1 and _inks(path)
    ]
    for stretch in side.leaf.stretches:
        if not stretch.turned:
            is_fault = any(_lies_under(path, stretch) for path in level)
            told = _("underlined")
            yield counted(is_fault, where_of(stretch, side.number), told, NO_FAULT_WARNED)


def _inks(path: Path) -> bool:
    return path.stroke is not None or path.fill is not None


def _lies_under(path: Path, stretch: Stretch) -> bool:
    gap = path.box.centre[1] - stretch.origin[1]
    if not 0 <= gap <= BELOW * stretch.size * MM_PER_POINT:
        return False
    box = stretch.box
    shared = min(path.box.right, box.right) - max(path.box.left, box.left)
    return shared >= COVERS * box.width and path.box.width <= box.width / COVERS


RULE = Rule(
    id="LEG-17",
    title=N_("Share of bold type; nothing underlined"),
    limit=at_most(N_("% of characters bold"), warning=30),
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
