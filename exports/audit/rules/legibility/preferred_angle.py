"""Small letters had better fill 20 minutes of arc.

What is printed as the farthest distance is where they fill 16: a sheet in the hand is not held
there, so its letters are measured at the distance of a hand.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.rules.legibility.least_angle import angle_at
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Role


def usual_angles(subject: Subject) -> Iterator[Measure]:
    """Yield the angle of everything that is to be acted on, where the sheet is held or hangs."""
    for side, block in subject.to_act_on():
        if block.role is not Role.MARK:
            yield angle_at(block, side.usual_distance(block.tier))


RULE = Rule(
    id="LEG-02",
    title=N_("Small letters have the preferred size for their distance"),
    limit=at_least(N_("minutes of arc"), warning=20),
    source=N_("ISO 9241-3 and NUREG-0700, 20 to 22 minutes preferred"),
    mark=Mark.VERIFIED,
    measure=usual_angles,
)
