"""The three gates, told."""

from __future__ import annotations

from chamberwise.engine.drill.measures.measured import Measured
from chamberwise.engine.drill.measures.times import Timed
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.debrief.content import Gate
from chamberwise.exports.debrief.figures import seconds
from chamberwise.exports.debrief.wording import HELP, Wording, lowered

OPEN, SHUT, AJAR = N_("open"), N_("not yet"), N_("late")
NO_TIMES = N_("The drill was interrupted: its times say nothing.")


def gates(of: Measured, words: Wording) -> tuple[Gate, ...]:
    """Return the gates in their order; the last is told only once both before it are open."""
    found = of.gates
    harm = tuple(words.harm(each) for each in found.harm)
    missed = tuple(
        _("Left out: {act}").format(act=words.act(each.critical.act)) for each in found.left_out
    )
    helped = tuple(_helped(each, words) for each in found.prompted)
    first = Gate("A", _("No harmful act"), _(SHUT) if harm else _(OPEN), harm)
    unseen = "; ".join(lowered(words.act(each.critical.act)) for each in found.not_reached)
    ended = (
        _("Not reached before the end, so neither done nor missed: {unseen}").format(unseen=unseen),
    )
    critical = (*missed, *helped, *(ended if unseen else ()))
    second = Gate(
        "B",
        _("Every critical act, recalled or after a nudge"),
        _(SHUT) if critical else _(OPEN),
        critical,
    )
    if harm or critical:
        third = Gate("C", _("In time"), _("not looked at before A and B are open"))
    elif any(each.duration for each in of.acts):
        late = tuple(_late(each, words) for each in found.late)
        third = Gate("C", _("In time, by local targets"), _(AJAR) if late else _(OPEN), late)
    else:
        third = Gate("C", _("In time"), _("not known"), (_(NO_TIMES),))
    return first, second, third


def _helped(timed: Timed, words: Wording) -> str:
    how = _(HELP[timed.done.level]) if timed.done else ""
    return _("{act}: {how}, so recognised and not recalled").format(
        act=words.act(timed.critical.act), how=how
    )


def _late(timed: Timed, words: Wording) -> str:
    took = seconds(timed.duration) if timed.duration else ""
    return _("{act}: {took}, local target {hard} s").format(
        act=words.act(timed.critical.act), took=took, hard=timed.critical.hard
    )
