"""Few colours carry meaning."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.inked import class_colours
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    colours = class_colours(subject)
    yield Measure(len(colours) + 1, told=_("{number} with black").format(number=len(colours) + 1))


RULE = Rule(
    id="COL-09",
    title=N_("Colours that carry meaning, black among them"),
    limit=at_most(N_("colours"), error=7, warning=4),
    source=N_("ISO 22324, few, never over seven"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
