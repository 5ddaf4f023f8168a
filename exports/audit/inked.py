"""Which colours were printed, on what, and which of them mean something."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from chamberwise.exports.audit.block import where_of
from chamberwise.exports.audit.colour.contrast import channels
from chamberwise.exports.audit.printed.content import Stretch
from chamberwise.exports.audit.rule import Where
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.sheet import Role, Tier

COLOURFUL = 0.25
"""Spread of the channels from which on a colour means something; washes stay below."""
BLACK = "#000000"


class Inked(NamedTuple):
    """A stretch of words, its ink and its ground."""

    stretch: Stretch
    ground: str
    tier: Tier
    role: Role
    where: Where


def inked(subject: Subject) -> Iterator[Inked]:
    """Yield all printed words with their colours; what no text was placed for counts as such."""
    for side in subject.sides:
        for block in side.blocks:
            for each in block.stretches:
                yield _on(side, each, block.tier, block.role)
        for each in side.strays:
            yield _on(side, each, Tier.ACT, Role.LINE)


def _on(side: Side, stretch: Stretch, tier: Tier, role: Role) -> Inked:
    ground = side.ground(stretch.box.centre, stretch.order)
    return Inked(stretch, ground, tier, role, where_of(stretch, side.number))


def to_act_on(subject: Subject) -> Iterator[Inked]:
    """Yield the words of the first two tiers, and the marks across the page."""
    for each in inked(subject):
        if each.tier is not Tier.REFER or each.role is Role.MARK:
            yield each


def is_colourful(colour: str) -> bool:
    """Return whether a colour is meant as one.

    >>> is_colourful("#a31515"), is_colourful("#e4eff9"), is_colourful("#595959")
    (True, False, False)
    """
    parts = channels(colour)
    return max(parts) - min(parts) > COLOURFUL * 255


def class_colours(subject: Subject) -> list[str]:
    """Return the colours that mean something, in the order met."""
    found: dict[str, None] = {}
    for side in subject.sides:
        for path in side.leaf.paths:
            found.update({each: None for each in (path.fill, path.stroke) if each})
        found.update({each.ink: None for each in side.leaf.stretches})
    return [each for each in found if is_colourful(each)]


def pairs(subject: Subject) -> Iterator[tuple[str, str]]:
    """Yield each two colours that must be told apart, black among them."""
    colours = class_colours(subject)
    return combinations([*colours, BLACK] if colours else [], 2)
