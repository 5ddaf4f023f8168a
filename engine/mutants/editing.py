"""Small edits of a pathway, on the frozen values themselves."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from chamberwise.engine.graph.arrows import rewired
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Step, StepId


def with_steps(pathway: Pathway, *steps: Step) -> Pathway:
    """Return the pathway with some steps in place of those of the same names."""
    return replace(pathway, steps={**pathway.steps, **{step.id: step for step in steps}})


def without_step(pathway: Pathway, name: StepId, onward: StepId) -> Pathway:
    """Return the pathway without a step; what led to it leads to `onward`."""
    steps = {
        each: rewired(step, lambda _, to: onward if to == name else to)
        for each, step in pathway.steps.items()
        if each != name
    }
    return replace(pathway, steps=steps, start=onward if pathway.start == name else pathway.start)


def numbered(names: Iterable[str]) -> Iterator[str]:
    """Yield each name, and from the second of the same on with its number: `fill`, `fill (2)`."""
    met: dict[str, int] = {}
    for name in names:
        met[name] = met.get(name, 0) + 1
        yield name if met[name] == 1 else f"{name} ({met[name]})"
