"""Small letters fill 16 minutes of arc at the distance they are read from."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.legibility.angle import angle
from chamberwise.exports.paper.sheet import Role


def angle_of(side: Side, block: Block) -> Measure:
    """Return the angle of a text's small letters at the distance of its tier."""
    return angle_at(block, side.distance(block.tier))


def angle_at(block: Block, distance: float) -> Measure:
    """Return the angle of a text's small letters at a distance in millimetres."""
    found = angle(block.x_height, distance)
    return Measure(
        found,
        block.where,
        _("{found} minutes of arc at {far} m").format(
            found=decimal(f"{found:.1f}"), far=decimal(f"{distance / 1000:g}")
        ),
    )


def angles(subject: Subject) -> Iterator[Measure]:
    """Yield the angle of everything that is to be acted on."""
    for side, block in subject.to_act_on():
        if block.role is not Role.MARK:
            yield angle_of(side, block)


RULE = Rule(
    id="LEG-01",
    title=N_("Small letters are large enough for their distance"),
    limit=at_least(N_("minutes of arc"), error=16),
    source=N_(
        "ISO 9241-3 and NUREG-0700 floor for characters; holding small letters to it is ours"
    ),
    mark=Mark.VERIFIED,
    measure=angles,
)
