"""Half of the page stays free of words."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject

MARGIN = 10.0


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        live = side.box.grown(-MARGIN).area
        words = sum(line.box.area for block in side.blocks for line in block.lines)
        share = 100 * words / live if live else 0.0
        yield Measure(
            share, side.top, _("{share} % of the page").format(share=decimal(f"{share:.0f}"))
        )


RULE = Rule(
    id="FLO-18",
    title=N_("Share of the page that is covered with words"),
    limit=at_most(N_("% of the page"), warning=50),
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
