"""No black words on a dark colour."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.lightness import lightness
from chamberwise.exports.audit.inked import inked, is_colourful
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject

DARK_GROUND, DARK_INK = 50, 40
"""CIE L*, ours."""


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in inked(subject):
        is_dark = is_colourful(each.ground) and lightness(each.ground) < DARK_GROUND
        is_fault = is_dark and lightness(each.stretch.ink) < DARK_INK
        yield counted(
            is_fault,
            each.where,
            _("{ink} on {ground}").format(ink=each.stretch.ink, ground=each.ground),
        )


RULE = Rule(
    id="COL-12",
    title=N_("No black words on dark red, green or blue"),
    limit=NO_FAULT,
    source=N_("NASA CR-177605 list"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
