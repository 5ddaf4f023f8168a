"""Each kind of step has its shape: questions in decisions, actions in processes.

Shapes without a name are those of the key.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.flow import box_of
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.language.values import told as told_value
from chamberwise.exports.paper.sheet import Outline, Role, Shape


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for node in (each for each in side.flow.nodes if each.of):
            inside = [each for each in side.blocks if box_of(node).holds(each.box.centre)]
            told = _fault(node, inside)
            yield counted(bool(told), Where(side.number, node.x, node.y, node.of), told)


def _fault(node: Shape, inside: list[Block]) -> str:
    asks = any(each.role is Role.QUESTION for each in inside)
    if node.outline is Outline.DECISION:
        return "" if inside else _("a decision without words")
    if asks:
        return _("a question in the shape of a {shape}").format(
            shape=told_value(node.outline.value)
        )
    if node.outline is Outline.CONNECTOR and not inside:
        return _("a connector without a number")
    return ""


RULE = Rule(
    id="FLO-01",
    title=N_("Each kind of step has its own shape"),
    limit=NO_FAULT,
    source=N_("flowchart symbols; ISO 5807 clause 9, from memory"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=DRAWN,
)
