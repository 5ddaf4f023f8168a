"""Small letters had better fill 20 minutes of arc."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Mark, Rule, at_least
from chamberwise.exports.audit.rules.legibility.least_angle import angles

RULE = Rule(
    id="LEG-02",
    title="Small letters have the preferred size for their distance",
    limit=at_least("minutes of arc", warning=20),
    source="ISO 9241-3 and NUREG-0700, 20 to 22 minutes preferred",
    mark=Mark.VERIFIED,
    measure=angles,
)
