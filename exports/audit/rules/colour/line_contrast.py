"""Borders and arrows stand out from what is around them."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.contrast import contrast
from chamberwise.exports.audit.printed.content import Path
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Side, Subject

OUTSIDE = 0.6
"""Millimetres outside a border where its surroundings are looked at."""


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for path in side.leaf.paths:
            # An outline in the colour of its own area is no border.
            if path.stroke and path.stroke != path.fill:
                found = _contrast(side, path, path.stroke)
                where = Where(side.number, path.box.left, path.box.top)
                yield Measure(found, where, _("{found} to 1").format(found=decimal(f"{found:.2f}")))


def _contrast(side: Side, path: Path, ink: str) -> float:
    """A border shows when it stands out from its inside or from its outside."""
    box = path.box
    inside = path.fill or side.ground(box.centre, path.order)
    beyond = (box.left - OUTSIDE, box.centre[1]), (box.centre[0], box.top - OUTSIDE)
    around = [side.ground(point, path.order) for point in beyond]
    return max(contrast(ink, ground) for ground in (inside, *around))


RULE = Rule(
    id="COL-03",
    title=N_("Contrast of borders and arrows"),
    limit=at_least(N_("to 1"), error=3),
    source="WCAG 2.2, 1.4.11",
    mark=Mark.VERIFIED,
    measure=_measure,
)
