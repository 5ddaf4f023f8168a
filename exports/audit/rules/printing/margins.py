"""Nothing that means something stands where printers do not print."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.geometry import Box
from chamberwise.exports.audit.printed.content import Path
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Side, Subject

MARK = 15.0
"""Shorter lines are marks to cut and fold by."""
HAIR = 0.5
"""A border straddles its edge by half its weight: this much is let go, in millimetres."""


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for stretch in side.leaf.stretches:
            yield _margin(side, stretch.box, stretch.text.strip())
        for path in side.leaf.paths:
            if path.stroke and not _is_mark(path):
                yield _margin(side, path.box.grown(-HAIR), "")


def _is_mark(path: Path) -> bool:
    width, height = path.box.width, path.box.height
    return min(width, height) < 1 and max(width, height) < MARK


def _margin(side: Side, box: Box, words: str) -> Measure:
    page = side.box
    found = min(
        box.left - page.left,
        box.top - page.top,
        page.right - box.right,
        page.bottom - box.bottom,
    )
    return Measure(
        found,
        Where(side.number, box.left, box.top, words),
        _("{found} mm").format(found=decimal(f"{found:.1f}")),
    )


RULE = Rule(
    id="PRT-02",
    title=N_("Margin around words and lines"),
    limit=at_least("mm", error=5, warning=10),
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
