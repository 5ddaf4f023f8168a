"""Letters that a reader with half the usual acuity can still read with some ease."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.rule import Mark, Rule, at_least
from chamberwise.exports.audit.rules.legibility.preferred_angle import usual_angles

ACUITY = 0.5
"""Decimal: 6/12."""
RESERVE = 2

RULE = Rule(
    id="LEG-07",
    title=N_("Small letters suit an acuity of 6/12 with twofold reserve"),
    limit=at_least(N_("minutes of arc"), warning=RESERVE * 5 / ACUITY),
    source=N_("5 minute letter at 6/6; acuity reserve 2 to 1"),
    mark=Mark.VERIFIED,
    measure=usual_angles,
)
