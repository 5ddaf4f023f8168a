"""Words to be acted on stand out under coloured light."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.contrast import TINTS, contrast
from chamberwise.exports.audit.inked import to_act_on
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.language.values import told


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in to_act_on(subject):
        found, tint = min(
            (contrast(each.stretch.ink, each.ground, light), name) for name, light in TINTS.items()
        )
        yield Measure(
            found,
            each.where,
            _("{found} to 1 in {tint} light").format(
                found=decimal(f"{found:.2f}"), tint=told(tint)
            ),
        )


RULE = Rule(
    id="COL-13",
    title=N_("Contrast under green, blue and red light"),
    limit=at_least(N_("to 1"), warning=4.5),
    source=N_("computed; insurance, no published requirement"),
    mark=Mark.COMPUTED,
    measure=_measure,
)
