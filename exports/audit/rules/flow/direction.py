"""The flow runs down and to the right."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import (
    NO_FAULT_WARNED,
    Mark,
    Measure,
    Rule,
    Where,
    at_least,
    counted,
)
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Arrow


def runs_on(arrow: Arrow) -> bool:
    """Return whether an arrow ends further down, or no higher and further right."""
    (x, y), (u, v) = arrow.points[0], arrow.points[-1]
    return v > y or (u > x and v >= y - abs(u - x))


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        arrows = side.flow.arrows
        back = [each for each in arrows if not runs_on(each)]
        if arrows:
            share = 100 * (len(arrows) - len(back)) / len(arrows)
            yield Measure(
                share,
                side.top,
                _("{share} % of arrows down or right").format(share=decimal(f"{share:.0f}")),
            )
        for each in back:
            where = Where(side.number, *each.points[0], each.of)
            told = _("leads back and has no head")
            yield counted(not each.has_head, where, told, NO_FAULT_WARNED)


RULE = Rule(
    id="FLO-10",
    title=N_("Arrows run down or right; others have a head"),
    limit=at_least(N_("% of arrows"), warning=90),
    source=N_("top to bottom norm of flowcharts (secondary source); ISO 5807, from memory"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=DRAWN,
)
