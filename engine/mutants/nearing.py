"""How many steps each step is from an edit, by arrows alone."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.exploration.program import Entering, Program
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Branch, Outcome, Step

FAR = 1_000_000


def edited_places(before: Library, after: Library) -> tuple[Place, ...]:
    """Return the steps that an edit changed: themselves, or an act that they do."""
    found: list[Place] = []
    for name, pathway in after.pathways.items():
        old = before.pathways[name]
        acts = _acts_changed(before, after, name)
        if old is pathway and not acts:
            continue
        if old.start != pathway.start:
            found.append(Place(name, pathway.start))
        found += [
            Place(name, step.id)
            for step in pathway.steps.values()
            if _changed(old, step) or acts & _acts_of(step)
        ]
    return tuple(dict.fromkeys(found))


def _acts_changed(before: Library, after: Library, pathway: str) -> set[str]:
    old, new = before.words(pathway).acts, after.words(pathway).acts
    return {name for name, act in new.items() if old.get(name) is not act}


def _changed(old: Pathway, step: Step) -> bool:
    was = old.steps.get(step.id)
    return was is not step and was != step


def _acts_of(step: Step) -> set[str | None]:
    lines = step.lines if isinstance(step, Action) else ()
    return {line.act for line in lines}


def distances(program: Program, near: Iterable[Place]) -> list[int]:
    """Return, by node, how many steps it is from the nearest of some places.

    What leads there in silence counts as being there: no walk stands still in between.
    """
    before = _before(program)
    far = [FAR] * len(program.nodes)
    here = list(dict.fromkeys(program.index[each] for each in near if each in program.index))
    for node in here:  # grows while it is gone through
        far[node] = 0
        if isinstance(program.nodes[node].step, Branch | Outcome):
            here += [each for each in before[node] if each not in here]
    steps = 0
    while here:
        steps += 1
        following: list[int] = []
        for node in here:
            for source in before[node]:
                if far[source] == FAR:
                    far[source] = steps
                    following.append(source)
        here = following
    return far


def _before(program: Program) -> list[list[int]]:
    """Return, by node, those from which arrows lead there, over handovers and back as well."""
    before: list[list[int]] = [[] for _ in program.nodes]
    for source, node in enumerate(program.nodes):
        for target in node.leads_to:
            before[target].append(source)
    for source, call in program.calls.items():
        _enter(before, source, call.enter)
        for outcome, enter in call.back.items():
            end = program.index.get(Place(call.pathway, outcome))
            if end is not None:
                _enter(before, end, enter)
    return before


def _enter(before: list[list[int]], source: int, enter: Entering) -> None:
    for target in (enter.last, *(node for node, _ in enter.chain)):
        before[target].append(source)
