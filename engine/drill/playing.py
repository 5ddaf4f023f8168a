"""What the pathway asks for next, and a beginning played rightly up to a step."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from chamberwise.engine.drill.doing import did, looked, what_is_seen
from chamberwise.engine.drill.entries import Did, Looked
from chamberwise.engine.drill.following import follow, lacks, noticed
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.standing import (
    Standing,
    first_standing,
    has_been,
    step_of,
)
from chamberwise.engine.model.step import Action, Question
from chamberwise.engine.model.words import ActId, FindingId

NOT_IN_THE_JOURNAL = -1
MOST_MOVES = 400
ANYBODY = "surgeon"


@dataclass(frozen=True, slots=True)
class Next:
    """Something the pathway asks for: an act to be done, or a finding to be looked for."""

    act: ActId | None = None
    finding: FindingId | None = None
    who: str = ANYBODY
    line: str = ""
    """The pathway's own words for it."""


def whats_next(scenario: Scenario, standing: Standing) -> tuple[Next, ...]:
    """Return what the pathway asks for now, in order; nothing at its end."""
    step = step_of(scenario, standing)
    if isinstance(step, Question):
        return (Next(finding=step.ask, line=step.question),)
    if not isinstance(step, Action):
        return ()
    wanted = lacks(scenario, standing, step)
    lines = {line.act: line for line in reversed(step.lines) if line.act in wanted}
    return tuple(Next(act=act, who=lines[act].who, line=lines[act].text) for act in wanted)


def who_does(scenario: Scenario, act: ActId) -> str:
    """Return the duty that the pathway first gives an act to."""
    for pathway in (scenario.pathway, *scenario.library.pathways):
        for step in scenario.library.pathways[pathway].steps.values():
            for line in step.lines if isinstance(step, Action) else ():
                if line.act == act:
                    return line.who
    return ANYBODY


def begun(scenario: Scenario) -> Standing:
    """Return the standing in which the drill begins: what is known is known, what is done done."""
    standing = first_standing(scenario)
    for finding in scenario.known:
        standing = noticed(scenario, standing, finding)
    standing = follow(scenario, standing)
    if scenario.begins_at is None:
        return standing
    ways = played(scenario, standing)
    there = (each for each in ways if has_been(scenario, each, (scenario.begins_at,)))
    return replace(next(there, standing), events=(), consequences=(), cues=())


def played(scenario: Scenario, standing: Standing) -> Iterator[Standing]:
    """Yield the standings of a drill in which every line is done as the pathway has it."""
    for _ in range(MOST_MOVES):
        step = step_of(scenario, standing)
        if isinstance(step, Question):
            saw = what_is_seen(scenario, standing, step.ask)
            entry = Looked(0, step.ask, saw, ANYBODY)
            standing = looked(scenario, standing, entry, NOT_IN_THE_JOURNAL)
            yield standing
        elif isinstance(step, Action) and whats_next(scenario, standing):
            for line in step.lines:
                if line.act is not None:
                    done = Did(0, line.act, line.who)
                    standing = did(scenario, standing, done, NOT_IN_THE_JOURNAL)
                    yield standing
        else:
            return


@lru_cache(maxsize=16)
def asked_for(scenario: Scenario) -> frozenset[ActId]:
    """Return the acts that the pathway asks for from beginning to end where all goes rightly."""
    first = standing = begun(scenario)
    for standing in played(scenario, first):
        if has_been(scenario, standing, scenario.ends_at):
            break
    return frozenset(standing.done[len(first.done) :])
