"""How high small letters are on what is held in the hand."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import IN_THE_HAND
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Role


def _measure(subject: Subject) -> Iterator[Measure]:
    for _where, block in subject.to_act_on():
        if block.role is not Role.MARK:
            yield Measure(
                block.x_height,
                block.where,
                _("{x_height} mm").format(x_height=decimal(f"{block.x_height:.2f}")),
            )


RULE = Rule(
    id="LEG-05",
    title=N_("Small letters held in the hand are high enough"),
    limit=at_least("mm", error=1.86, warning=2.54),
    source=N_("16 minutes at 0.4 m; NASA CR-177605 list, 0.10 inch"),
    mark=Mark.COMPUTED,
    measure=_measure,
    kinds=IN_THE_HAND,
)
