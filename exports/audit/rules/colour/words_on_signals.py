"""White on red, black on yellow, white on green."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.inked import inked
from chamberwise.exports.audit.rule import NO_FAULT_WARNED, Mark, Measure, Rule, counted
from chamberwise.exports.audit.signals import Signal, signal_of
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.language.values import told as told_value

INK = {Signal.RED: "#ffffff", Signal.YELLOW: "#000000", Signal.GREEN: "#ffffff"}


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in inked(subject):
        signal = signal_of(each.ground)
        if signal:
            told = _("{ink} on {ground}").format(
                ink=each.stretch.ink, ground=told_value(signal.value)
            )
            yield counted(each.stretch.ink != INK[signal], each.where, told)


RULE = Rule(
    id="COL-11",
    title=N_("White on red and green, black on yellow"),
    limit=NO_FAULT_WARNED,
    source="ISO 22324",
    mark=Mark.VERIFIED,
    measure=_measure,
)
