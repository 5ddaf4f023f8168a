"""A safety rule switched off on a day that is still to come."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.library import File

CODE = Code(
    "decided-ahead",
    Severity.ERROR,
    N_("Switched off before anybody can have decided it"),
    N_("A rule that stands against harm would be off although nobody has answered for it yet."),
)


def check(file: File, today: date) -> Iterator[Problem]:
    """Yield a problem of a local sheet for every rule whose decision lies ahead."""
    switched_off = file.sheet.local.switched_off if file.sheet else {}
    for name, off in switched_off.items():
        if off.on > today:
            at = ("switched off", name, "on")
            message = _("`{rule}` is switched off by a decision of {day}, which is still to come")
            advice = _("Write the day on which it was decided, or leave the rule on until then.")
            told = message.format(rule=name, day=off.on.isoformat())
            yield CODE.at(file.shown_as, at, file.tree.span(at), told, advice)
