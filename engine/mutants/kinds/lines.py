"""The lines of a step, whether done now or owed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import NamedTuple

from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Line, Outcome, StepId
from chamberwise.engine.mutants.editing import numbered, with_steps


class LinesOf(NamedTuple):
    """A step that has lines, and they."""

    name: StepId
    lines: tuple[Line, ...]


def lines_with_act(pathway: Pathway) -> Iterator[tuple[LinesOf, int, str]]:
    """Yield every line with an act: its step, its place there, and the act, numbered if twice."""
    for name, step in pathway.steps.items():
        if isinstance(step, Action):
            lines = step.lines
        elif isinstance(step, Outcome):
            lines = step.owed
        else:
            continue
        places = [place for place, line in enumerate(lines) if line.act is not None]
        for place, act in zip(places, numbered(lines[p].act or "" for p in places), strict=True):
            yield LinesOf(name, lines), place, act


def with_lines(pathway: Pathway, step: LinesOf, lines: Iterable[Line]) -> Pathway:
    """Return the pathway with other lines in one step."""
    old = pathway.steps[step.name]
    if isinstance(old, Action):
        return with_steps(pathway, replace(old, lines=tuple(lines)))
    assert isinstance(old, Outcome)
    return with_steps(pathway, replace(old, owed=tuple(lines)))
