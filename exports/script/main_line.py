"""The main line of a pathway: the order in which hand-held sheets tell it."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.chart.main_line import MOST_FIRST
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, StepId

AFTER_THAT = "after that"


def main_line(pathway: Pathway) -> tuple[StepId, ...]:
    """Return the steps that the wall chart names, or else the way down the page."""
    chart = pathway.wall_chart
    if chart is not None:
        return tuple(dict.fromkeys((*chart.first, *chart.spine)))
    return _down_the_page(pathway)


def first_actions(pathway: Pathway, line: tuple[StepId, ...]) -> tuple[Action, ...]:
    """Return the first few actions of the line, what comes before them aside."""
    if pathway.wall_chart is not None and pathway.wall_chart.first:
        return _actions(pathway, pathway.wall_chart.first)
    steps = [pathway.steps[name] for name in line]
    start = next((place for place, each in enumerate(steps) if isinstance(each, Action)), 0)
    end = start
    while end < min(len(steps), start + MOST_FIRST) and isinstance(steps[end], Action):
        end += 1
    return _actions(pathway, line[start:end])


def _actions(pathway: Pathway, names: Iterable[StepId]) -> tuple[Action, ...]:
    steps = (pathway.steps[name] for name in names)
    return tuple(each for each in steps if isinstance(each, Action))


def _down_the_page(pathway: Pathway) -> tuple[StepId, ...]:
    """Return the steps met by going, from each, to the nearest one further down the file."""
    place = {name: number for number, name in enumerate(pathway.steps)}
    line: list[StepId] = []
    here: StepId | None = pathway.start
    while here in place and here not in line:
        line.append(here)
        arrows = targets(pathway.steps[here])
        onward = [each.step for each in arrows if each.label != AFTER_THAT]
        new = [each for each in onward if each in place and each not in line]
        below = [each for each in new if place[each] > place[here]]
        here = min(below or new, key=place.__getitem__, default=None)
    return tuple(line)
