"""The distance that is printed is the one that was computed, rounded down.

Pages that print one distance for all of them are taken together.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import ON_THE_WALL
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.legibility.angle import read_from
from chamberwise.exports.paper.sheet import Role, Tier

SLACK = 0.005
"""Metres by which the reading back of sizes may err."""


def computed(sides: Sequence[Side], tier: Tier) -> float | None:
    """Return from how far the smallest letters of a tier can be read, in metres."""
    sizes = [
        block.size
        for side in sides
        for block in side.blocks
        if block.stretches and block.tier is tier and block.role is not Role.MARK
    ]
    return read_from(min(sizes), sides[0].terms.lighting.least_angle) if sizes else None


def _measure(subject: Subject) -> Iterator[Measure]:
    says_the_same = len({side.printed_distances for side in subject.sides}) == 1
    for side in subject.sides:
        yield from _on(side, subject.sides if says_the_same else (side,))


def _on(side: Side, sides: Sequence[Side]) -> Iterator[Measure]:
    tiers = [(tier, computed(sides, tier)) for tier in (Tier.GLANCE, Tier.ACT)]
    known = [(tier, far) for tier, far in tiers if far is not None]
    said = side.distances_told
    if not said and side.terms.kind in ON_THE_WALL and known:
        yield counted(True, side.top, _("no distance is printed"))
    if len(said) == 1 and len(known) == 2:
        known = [min(known, key=lambda each: each[1])]
    for (printed, step), (tier, far) in zip(said, known, strict=False):
        is_wrong = printed > far + SLACK or printed <= far - step - SLACK
        told = _("{printed} m printed, {far} m computed for tier {tier}").format(
            printed=decimal(f"{printed:g}"), far=decimal(f"{far:.2f}"), tier=tier.value
        )
        yield counted(is_wrong, side.top, told)


RULE = Rule(
    id="LEG-10",
    title=N_("The printed reading distance equals the computed one"),
    limit=NO_FAULT,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
