"""What nothing asks any more at a step, so that SPIN may forget it: a second, coarser reckoning.

It follows every arrow there is, into pathways handed over to and back to whoever hands over to
them. What the rule itself asks of is never forgotten.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Branch, Handover, Outcome, Question, Step

Place: TypeAlias = tuple[str, str]
"""A pathway and its step."""
Thing: TypeAlias = tuple[str, str]
"""A finding with the pathway that owns it, or a bounded step with its pathway."""


def needed(library: Library, pathways: list[str]) -> Mapping[Place, frozenset[Thing]]:
    """Return, for each step, the findings and the counts that some way onward may still read.

    A count is named by its step with "#" before it.
    """
    places = [(name, step) for name in pathways for step in library.pathways[name].steps]
    onward = {place: set(_onward(library, pathways, place)) for place in places}
    found: dict[Place, frozenset[Thing]] = {place: frozenset() for place in places}
    changed = True
    while changed:
        changed = False
        for place in reversed(places):
            step = _step(library, place)
            after = {thing for to in onward[place] for thing in (*found[to], (to[0], f"#{to[1]}"))}
            now = frozenset({*_reads(library, place, step), *(after - _overwrites(library, place))})
            if now != found[place]:
                found[place], changed = now, True
    return found


def _step(library: Library, place: Place) -> Step:
    return library.pathways[place[0]].steps[place[1]]


def owned(library: Library, pathway: str, finding: str) -> Thing:
    """Return a finding as one pathway names it; shared ones are owned by none."""
    return (pathway if finding in library.pathways[pathway].words.findings else "", finding)


def _reads(library: Library, place: Place, step: Step) -> Iterator[Thing]:
    if isinstance(step, Question):
        yield owned(library, place[0], step.ask)
    elif isinstance(step, Branch):
        for row in step.rows:
            for name, _ in row.when.terms:
                yield owned(library, place[0], name)


def _overwrites(library: Library, place: Place) -> set[Thing]:
    step = _step(library, place)
    if not isinstance(step, Action):
        return set()
    acts = library.words(place[0]).acts
    effects = [acts[line.act].effects for line in step.lines if line.act in acts]
    return {
        owned(library, place[0], name)
        for each in (*effects, step.effects)
        for name in (*each.stale, *(known for known, _ in each.known))
    }


def _onward(library: Library, pathways: list[str], place: Place) -> Iterator[Place]:
    pathway, step = place[0], _step(library, place)
    if isinstance(step, Handover):
        yield step.to, library.pathways[step.to].start
    elif isinstance(step, Outcome):
        yield from _back(library, pathways, place)
    else:
        yield from ((pathway, name) for name in _targets(step) if name is not None)
    if step.bound:
        yield pathway, step.bound.after_that


def _targets(step: Step) -> Iterator[str | None]:
    match step:
        case Question(answers=answers):
            yield from (answer.go_to for answer in answers)
        case Action(go_to=go_to):
            yield go_to
        case Branch(rows=rows, otherwise=otherwise, not_known=not_known):
            yield from (*(row.go_to for row in rows), otherwise, not_known)


def _back(library: Library, pathways: list[str], place: Place) -> Iterator[Place]:
    for name in pathways:
        for step in library.pathways[name].steps.values():
            if isinstance(step, Handover) and step.to == place[0]:
                target = dict(step.on_return).get(place[1])
                if target is not None:
                    yield name, target
