"""Words stand inside their box with half an em to spare."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.flow import inner_outline
from chamberwise.exports.audit.geometry import clearance
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, at_least, counted
from chamberwise.exports.audit.rules.structure.items_in_a_block import holder
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.paper.sheet import Outline, Role, Shape

PADDING = at_least("em", error=0.5)
INSIDE = at_least("em", error=0)
"""For panels, and for numbers, which fill their mark."""
NO_BOX_OF_A_STEP = (Outline.PANEL, Outline.CONNECTOR)
SHORTENED = ("…", "...")


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for block in side.blocks:
            shape = holder(side, block) if block.stretches else None
            if shape:
                yield _padding(block, shape)
                yield _ellipsis(block)


def _padding(block: Block, shape: Shape) -> Measure:
    outline = inner_outline(shape)
    found = min(clearance(outline, corner) for corner in block.box.corners)
    room = found / (block.size * MM_PER_POINT)
    is_mark = block.role is Role.NUMBER or shape.outline in NO_BOX_OF_A_STEP
    limit = INSIDE if is_mark else PADDING
    return Measure(
        round(room, 2),
        block.where,
        _("{room} em to the edge").format(room=decimal(f"{room:.2f}")),
        limit,
    )


def _ellipsis(block: Block) -> Measure:
    return counted(block.flat.endswith(SHORTENED), block.where, _("words left off"), NO_FAULT)


RULE = Rule(
    id="FLO-16",
    title=N_("Words inside their box, half an em from its edge"),
    limit=PADDING,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
