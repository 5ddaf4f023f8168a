"""White on red, black on yellow, white on green."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.inked import inked
from chamberwise.exports.audit.rule import NO_FAULT_WARNED, Mark, Measure, Rule, counted
from chamberwise.exports.audit.signals import Signal, signal_of
from chamberwise.exports.audit.subject import Subject

INK = {Signal.RED: "#ffffff", Signal.YELLOW: "#000000", Signal.GREEN: "#ffffff"}


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in inked(subject):
        signal = signal_of(each.ground)
        if signal:
            told = f"{each.stretch.ink} on {signal.value}"
            yield counted(each.stretch.ink != INK[signal], each.where, told)


RULE = Rule(
    id="COL-11",
    title="White on red and green, black on yellow",
    limit=NO_FAULT_WARNED,
    source="ISO 22324",
    mark=Mark.VERIFIED,
    measure=_measure,
)
