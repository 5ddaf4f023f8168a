"""The main line of a pathway: the one order in which its steps are read from a wall.

An author names it under `wall chart`. Otherwise it is the way most teams would go if every answer
were as likely as any other, and nobody left before there is nothing more to do.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.pathway import Pathway, WallChart
from chamberwise.engine.model.step import Action, StepId

MOST_FIRST = 4
MOST_ROWS = 30
ROUNDS = 60
AFTER_THAT = "after that"


def wall_chart(pathway: Pathway) -> WallChart:
    """Return what stands on the wall: as the author named it, or the likeliest way."""
    if pathway.wall_chart is not None:
        return pathway.wall_chart
    line = likeliest(pathway)
    count = 0
    while count < MOST_FIRST and count < len(line) - 1 and _is_action(pathway, line[count]):
        count += 1
    return WallChart(pathway.summary, line[:count], line[count : count + MOST_ROWS])


def likeliest(pathway: Pathway) -> tuple[StepId, ...]:
    """Return the steps met by going on, from each, to where most walks come and go on.

    All walks come to an end: counted like other steps it would be next wherever it can be.
    """
    shares = _shares(pathway)
    line, here = [], pathway.start
    while here in pathway.steps and here not in line:
        line.append(here)
        onward = [each for each in _onward(pathway, here) if each not in line]
        if not onward:
            break
        here = max(onward, key=lambda each: (_goes_on(pathway, each), shares[each]))
    return tuple(line)


def _shares(pathway: Pathway) -> Mapping[StepId, float]:
    """Return how often a walk meets each step, with every arrow of a step as likely."""
    met = dict.fromkeys(pathway.steps, 0.0)
    here = {pathway.start: 1.0} if pathway.start in pathway.steps else {}
    for _ in range(ROUNDS):
        onward: dict[StepId, float] = {}
        for name, share in here.items():
            met[name] += share
            ways = list(_onward(pathway, name))
            for each in ways:
                onward[each] = onward.get(each, 0.0) + share / len(ways)
        here = onward
    return met


def _onward(pathway: Pathway, name: StepId) -> Iterable[StepId]:
    arrows = targets(pathway.steps[name])
    found = [target.step for target in arrows if target.label != AFTER_THAT]
    return [each for each in found if each in pathway.steps]


def _goes_on(pathway: Pathway, name: StepId) -> bool:
    return bool(list(_onward(pathway, name)))


def _is_action(pathway: Pathway, name: StepId) -> bool:
    return isinstance(pathway.steps[name], Action)
