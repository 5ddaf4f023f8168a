"""Pathways that bear another name now and are the same, and a library that calls them so.

Found before any other name: steps, rules and the unit's sheet speak of pathways by name.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import TypeAlias

from chamberwise.engine.graph.met import view
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.local import Local
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.rule import AnyOf, Rule
from chamberwise.engine.model.step import Handover, PathwayId, Step
from chamberwise.engine.model.words import Words

SHARE = 0.5
"""How many of the steps must be the same for one pathway to be the other."""

Now: TypeAlias = Callable[[PathwayId], PathwayId]


def same_pathways(old: Library, new: Library) -> dict[PathwayId, PathwayId]:
    """Return the pathways whose name is gone, each with the name it bears now.

    Two that could each be the other are left apart, as one gone and one new.
    """
    gone = [each for name, each in old.pathways.items() if name not in new.pathways]
    come = [each for name, each in new.pathways.items() if name not in old.pathways]
    alike = [(was.id, now.id) for was in gone for now in come if _is_same(was, now)]
    return {
        was: now
        for was, now in alike
        if sum(one == was or other == now for one, other in alike) == 1
    }


def _is_same(old: Pathway, new: Pathway) -> bool:
    same = sum(
        name in new.steps and _met(step) == _met(new.steps[name])
        for name, step in old.steps.items()
    )
    return same > SHARE * max(len(old.steps), len(new.steps))


def _met(step: Step) -> object:
    return view(replace(step, to="") if isinstance(step, Handover) else step)


def pathways_called(old: Library, renamed: Mapping[PathwayId, PathwayId]) -> Library:
    """Return a library with its pathways under the names of now; all else stays as it is."""
    if not renamed:
        return old

    def now(name: PathwayId) -> PathwayId:
        return renamed.get(name, name)

    return Library(
        _words(old.shared, now),
        {now(name): _pathway(each, now) for name, each in old.pathways.items()},
        old.local and _local(old.local, now),
        old.translation,
    )


def _pathway(pathway: Pathway, now: Now) -> Pathway:
    steps = {name: _step(each, now) for name, each in pathway.steps.items()}
    return replace(pathway, id=now(pathway.id), steps=steps, words=_words(pathway.words, now))


def _step(step: Step, now: Now) -> Step:
    return replace(step, to=now(step.to)) if isinstance(step, Handover) else step


def _words(words: Words, now: Now) -> Words:
    return replace(words, rules={name: _rule(each, now) for name, each in words.rules.items()})


def _rule(rule: Rule, now: Now) -> Rule:
    scope = replace(
        rule.scope, opens=_any_of(rule.scope.opens, now), closes=_any_of(rule.scope.closes, now)
    )
    return replace(rule, of=_any_of(rule.of, now), by=_any_of(rule.by, now), scope=scope)


def _any_of(several: AnyOf, now: Now) -> AnyOf:
    return tuple(
        replace(each, hands_over_to=tuple(map(now, each.hands_over_to))) for each in several
    )


def _local(local: Local, now: Now) -> Local:
    return replace(
        local,
        over=now(local.over),
        covers=tuple(map(now, local.covers)),
        targets={_target(at, now): each for at, each in local.targets.items()},
    )


def _target(at: str, now: Now) -> str:
    pathway, slash, step = at.partition("/")
    return f"{now(pathway)}{slash}{step}"
