"""The numbers of steps on paper: document order, the same on every sheet."""

from __future__ import annotations

from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import StepId


def step_numbers(pathway: Pathway) -> dict[StepId, int]:
    """Return the number of each step, from 1."""
    return {name: number for number, name in enumerate(pathway.steps, 1)}
