"""The three gates, told."""

from __future__ import annotations

from chamberwise.engine.drill.measures.measured import Measured
from chamberwise.engine.drill.measures.times import Timed
from chamberwise.exports.debrief.content import Gate
from chamberwise.exports.debrief.figures import seconds
from chamberwise.exports.debrief.wording import HELP, Wording, lowered

OPEN, SHUT, AJAR = "open", "not yet", "late"
NO_TIMES = "The drill was interrupted: its times say nothing."


def gates(of: Measured, words: Wording) -> tuple[Gate, ...]:
    """Return the gates in their order; the last is told only once both before it are open."""
    found = of.gates
    harm = tuple(words.harm(each) for each in found.harm)
    missed = tuple(f"Left out: {words.act(each.critical.act)}" for each in found.left_out)
    helped = tuple(_helped(each, words) for each in found.prompted)
    first = Gate("A", "No harmful act", SHUT if harm else OPEN, harm)
    unseen = "; ".join(lowered(words.act(each.critical.act)) for each in found.not_reached)
    ended = (f"Not reached before the end, so neither done nor missed: {unseen}",)
    critical = (*missed, *helped, *(ended if unseen else ()))
    second = Gate(
        "B",
        "Every critical act, recalled or after a nudge",
        SHUT if critical else OPEN,
        critical,
    )
    if harm or critical:
        third = Gate("C", "In time", "not looked at before A and B are open")
    elif any(each.duration for each in of.acts):
        late = tuple(_late(each, words) for each in found.late)
        third = Gate("C", "In time, by local targets", AJAR if late else OPEN, late)
    else:
        third = Gate("C", "In time", "not known", (NO_TIMES,))
    return first, second, third


def _helped(timed: Timed, words: Wording) -> str:
    how = HELP[timed.done.level] if timed.done else ""
    return f"{words.act(timed.critical.act)}: {how}, so recognised and not recalled"


def _late(timed: Timed, words: Wording) -> str:
    took = seconds(timed.duration) if timed.duration else ""
    return f"{words.act(timed.critical.act)}: {took}, local target {timed.critical.hard} s"
