"""The first minute, cut at 10, 30 and 60 seconds by the targets of its steps, added up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import accumulate

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Action
from chamberwise.exports.roles.content import IN_THIS_ORDER

STRETCHES = {10: N_("0 to 10 s"), 30: N_("10 to 30 s"), 60: N_("30 to 60 s")}
AFTER = N_("After 60 s")


def opening(first: Sequence[Action]) -> Mapping[str, list[Action]]:
    """Return the first actions by stretch; all "in this order" unless each has a target."""
    targets = [each.time_target for each in first]
    known = [each for each in targets if each is not None]
    if len(known) < len(targets) or not known:
        return {_(IN_THIS_ORDER): [*first]}
    found: dict[str, list[Action]] = {}
    for step, end in zip(first, accumulate(known), strict=True):
        found.setdefault(_stretch(end), []).append(step)
    return found


def _stretch(end: int) -> str:
    held = (_(title) for limit, title in STRETCHES.items() if end <= limit)
    return next(held, _(AFTER)).replace(" s", "\u00a0s")
