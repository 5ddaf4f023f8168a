"""Half of the page stays free of words."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject

MARGIN = 10.0


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        live = side.box.grown(-MARGIN).area
        words = sum(line.box.area for block in side.blocks for line in block.lines)
        share = 100 * words / live if live else 0.0
        yield Measure(share, side.top, f"{share:.0f} % of the page")


RULE = Rule(
    id="FLO-18",
    title="Share of the page that is covered with words",
    limit=at_most("% of the page", warning=50),
    source="common practice, no source",
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
