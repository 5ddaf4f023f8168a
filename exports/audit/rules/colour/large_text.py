"""Large words get no lesser contrast: large is judged at a desk, a wall chart is not."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.contrast import contrast
from chamberwise.exports.audit.inked import inked
from chamberwise.exports.audit.kinds import ON_THE_WALL
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Subject

LARGE = 14.0
"""Points: from here on bold type counts as large."""


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in inked(subject):
        if each.stretch.size >= LARGE:
            found = contrast(each.stretch.ink, each.ground)
            yield Measure(
                found, each.where, _("{found} to 1").format(found=decimal(f"{found:.2f}"))
            )


RULE = Rule(
    id="COL-02",
    title=N_("Large words on a wall chart keep the contrast of small ones"),
    limit=at_least(N_("to 1"), error=4.5),
    source=N_("WCAG 2.2, 1.4.3, its relaxation refused"),
    mark=Mark.COMPUTED,
    measure=_measure,
    kinds=ON_THE_WALL,
)
