"""What a colour means is also said by a word or a shape."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.flow import box_of
from chamberwise.exports.audit.inked import is_colourful
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Arrow, Outline, Role, Shape

PLAIN = (Outline.PANEL, Outline.PROCESS)
NEAR = 3.0
"""A word this near to a coloured panel stands beside it, in millimetres."""


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for item in side.page.items:
            if isinstance(item, Shape) and _is_coloured(item.border, item.ground):
                where = Where(side.number, item.x, item.y, item.of)
                yield counted(not _has_cue(side, item), where, _("colour without word or shape"))
            if isinstance(item, Arrow) and _is_coloured(item.ink):
                where = Where(side.number, *item.points[0], item.of)
                yield counted(
                    not _is_labelled(side, item), where, _("coloured arrow without a word")
                )


def _is_coloured(*inks: Ink) -> bool:
    return any(ink is not Ink.CLEAR and is_colourful(ink.value) for ink in inks)


def _has_cue(side: Side, shape: Shape) -> bool:
    if shape.outline not in PLAIN:
        return True
    room = box_of(shape).grown(NEAR)
    return any(
        room.holds(each.box.centre) and any(letter.isalpha() for letter in each.flat)
        for each in side.blocks
    )


def _is_labelled(side: Side, arrow: Arrow) -> bool:
    return any(
        each.role is Role.ANSWER and bool(arrow.of) and each.text.of == arrow.of
        for each in side.blocks
    )


RULE = Rule(
    id="COL-04",
    title=N_("Meaning never by colour alone"),
    limit=NO_FAULT,
    source=N_("ISO 22324, supporting cues; WCAG 2.2, 1.4.1, from memory"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
