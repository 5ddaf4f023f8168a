"""The first actions stand in a box, under a heading, before anything else.

A plan that is begun in calm has none. Whether they were forgotten only a person can tell: that
is a warning.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.flow import box_of
from chamberwise.exports.audit.kinds import ON_THE_WALL, TO_DO
from chamberwise.exports.audit.rule import (
    NO_FAULT,
    NO_FAULT_WARNED,
    Mark,
    Measure,
    Rule,
    at_most,
    counted,
)
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.sheet import Role, Shape, Tier

MOST = at_most(N_("first actions"), warning=4)


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides[:1]:
        first = [each for each in side.blocks if _is_first(each)]
        told = _fault(side, first) if first else ""
        none = _("no first actions for reading across the room")
        yield counted(not first, side.top, none, NO_FAULT_WARNED)
        where = first[0].where if first else side.top
        yield counted(bool(told), where, told)
        yield Measure(len(first), where, _("{count} first actions").format(count=len(first)), MOST)


def _is_first(block: Block) -> bool:
    return block.tier is Tier.GLANCE and block.role in TO_DO


def _fault(side: Side, first: list[Block]) -> str:
    order = [id(each) for each in side.blocks]
    start = order.index(id(first[0]))
    before = side.blocks[:start]
    if any(each.role in (*TO_DO, Role.QUESTION, Role.ANSWER) for each in before):
        return _("something else is to be done before the first actions")
    if not any(each.role is Role.HEADING for each in before):
        return _("the first actions have no heading")
    boxes = [box_of(each) for each in side.page.items if isinstance(each, Shape)]
    if not all(any(box.contains(each.box, 0.5) for box in boxes) for each in first):
        return _("the first actions are not boxed")
    return ""


RULE = Rule(
    id="STR-04",
    title=N_("First actions: boxed, first on the page, labelled, four at most"),
    limit=NO_FAULT,
    source=N_("Cowan 2001, about four chunks; boxing: CAP 676, from memory"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=ON_THE_WALL,
)
