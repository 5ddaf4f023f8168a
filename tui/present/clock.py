"""How long a walk has taken, pauses between sittings left out."""

from __future__ import annotations

from datetime import datetime, timedelta
from itertools import pairwise

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Action
from chamberwise.engine.walk.entries import Noted, Resumed
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.text import clock


def walk_seconds(walk: Walk, now: datetime) -> int:
    """Return the seconds spent walking, up to the end once the walk is over."""
    spent = sum(
        (later.at - earlier.at for earlier, later in pairwise(walk.journal) if _counts(later)),
        timedelta(0),
    )
    if not walk.is_over:
        spent += now - walk.journal[-1].at
    return max(0, int(spent.total_seconds()))


def _counts(entry: object) -> bool:
    return not isinstance(entry, Resumed)


def step_seconds(walk: Walk, now: datetime) -> int:
    """Return the seconds since the walk last came to the step it stands on."""
    came = next(entry.at for entry in reversed(walk.journal) if not isinstance(entry, Noted))
    return max(0, int((now - came).total_seconds()))


def clocks(walk: Walk, now: datetime) -> tuple[str, str]:
    """Return the walk's clock and the step's, the local target told by a word once it is passed."""
    total = _("walk {clock}").format(clock=clock(walk_seconds(walk, now)))
    if walk.is_over:
        return total, ""
    seconds = step_seconds(walk, now)
    target = walk.step.time_target if isinstance(walk.step, Action) else None
    told = _("step {clock}")
    if target is not None:
        told = _("step {clock}, target {target} s")
        if seconds > target:
            told = _("step {clock} PAST TARGET {target} s")
    return total, told.format(clock=clock(seconds), target=target)
