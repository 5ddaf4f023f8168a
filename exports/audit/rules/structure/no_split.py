"""No box is cut by the edge of a page or drawn on two."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.flow import box_of
from chamberwise.exports.audit.kinds import ACROSS_PAGES
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.sheet import Outline, Shape

SLACK = 0.1


def _measure(subject: Subject) -> Iterator[Measure]:
    seen: dict[str, int] = {}
    for side in subject.sides:
        yield from _cut(side)
        if subject.terms.kind in ACROSS_PAGES:
            yield from _twice(side, seen)


def _cut(side: Side) -> Iterator[Measure]:
    for item in side.page.items:
        if isinstance(item, Shape):
            is_cut = not side.box.contains(box_of(item), SLACK)
            yield counted(is_cut, _at(side, item), _("cut by the edge of the page"))
    for block in side.blocks:
        is_cut = not side.box.contains(block.box, SLACK)
        yield counted(is_cut, block.where, _("cut by the edge of the page"))


def _twice(side: Side, seen: dict[str, int]) -> Iterator[Measure]:
    for node in side.flow.nodes:
        if node.of and node.outline is not Outline.CONNECTOR:
            other = seen.setdefault(node.of, side.number)
            told = _("also drawn on page {other}").format(other=other)
            yield counted(other != side.number, _at(side, node), told)


def _at(side: Side, shape: Shape) -> Where:
    return Where(side.number, shape.x, shape.y, shape.of)


RULE = Rule(
    id="STR-09",
    title=N_("No step or box is split across pages"),
    limit=NO_FAULT,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
