"""Colours that mean different things look different to those who lack a cone."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.vision import BLUE_YELLOW, RED_GREEN, difference
from chamberwise.exports.audit.inked import pairs
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Subject

COMMON = at_least("CIEDE2000", error=10, warning=20)
RARE = at_least("CIEDE2000", warning=8)


def _measure(subject: Subject) -> Iterator[Measure]:
    for one, other in pairs(subject):
        for sights, limit in ((RED_GREEN, COMMON), (BLUE_YELLOW, RARE)):
            for sight in sights:
                found = difference(one, other, sight)
                where = Where(text=_("{one} and {other}").format(one=one, other=other))
                yield Measure(
                    found,
                    where,
                    _("{found} for {sight}").format(found=decimal(f"{found:.1f}"), sight=sight),
                    limit,
                )


RULE = Rule(
    id="COL-06",
    title=N_("CIEDE2000 between the same colours under protan, deutan and tritan vision"),
    limit=COMMON,
    source=N_("Brettel 1997, Viénot 1999, Machado 2009; cut-offs calibrated, none is published"),
    mark=Mark.COMPUTED,
    measure=_measure,
)
