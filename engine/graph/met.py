"""What the team meets at a step, wherever it stands."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import replace

from chamberwise.engine.model.step import Action, Handover, Question, Step
from chamberwise.engine.model.words import NO_EFFECTS


def view(step: Step) -> Hashable:
    """Return what the team meets at a step: all of it but its name, where it leads, and what is

    known after it, which shows in what is asked later.
    """
    step = replace(step, id="", bound=None)
    match step:
        case Question():
            return replace(step, answers=tuple(replace(each, go_to="") for each in step.answers))
        case Action():
            return replace(step, go_to="", effects=NO_EFFECTS)
        case Handover():
            return replace(step, on_return=())
    return step
