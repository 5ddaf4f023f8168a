"""Red is for danger and acting now, yellow for caution, green for safe."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import NO_FAULT_WARNED, Mark, Measure, Rule, counted
from chamberwise.exports.audit.signals import Signal, Signalled, signalled
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.language.values import told
from chamberwise.exports.paper.sheet import Outline, Role, Tier


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in signalled(subject):
        yield counted(
            not _is_right(each),
            each.where,
            _("{value} for something else").format(value=told(each.signal.value)),
        )


def _is_right(each: Signalled) -> bool:
    roles = {block.role for block in each.words}
    if each.signal is Signal.RED:
        is_now = any(block.tier is Tier.GLANCE for block in each.words)
        return is_now or bool(roles & {Role.CAUTION, Role.MARK})
    if each.signal is Signal.YELLOW:
        return Role.CAUTION in roles
    return each.shape.outline is Outline.TERMINATOR


RULE = Rule(
    id="COL-10",
    title=N_("Red, yellow and green mean what they always mean"),
    limit=NO_FAULT_WARNED,
    source="ISO 22324",
    mark=Mark.VERIFIED,
    measure=_measure,
)
