"""After which of the first actions a full minute has passed, by their targets added up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import accumulate

from chamberwise.engine.model.step import Action, StepId

MINUTE = 60


def call_outs(first: Sequence[Action]) -> Mapping[StepId, int]:
    """Return the minutes to call out after a step; nothing unless each step has a target."""
    targets = [each.time_target for each in first if each.time_target is not None]
    if len(targets) < len(first):
        return {}
    ends = [*accumulate(targets)]
    starts = [0, *ends]
    return {
        step.id: end // MINUTE
        for step, start, end in zip(first, starts, ends, strict=False)
        if end // MINUTE > start // MINUTE
    }
