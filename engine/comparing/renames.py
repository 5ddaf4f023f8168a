"""Steps that bear another name now and are the same steps.

A step is told again by what is met at it, or by where it stands: what leads to it and where it
leads. Two that could each be the other are left apart, as one removed and one added.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import replace
from typing import TypeAlias

from chamberwise.engine.graph.arrows import arrows, rewired
from chamberwise.engine.graph.met import view
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, WallChart
from chamberwise.engine.model.rule import AnyOf, Rule
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)

Renames: TypeAlias = Mapping[StepId, StepId]
"""From the name of a step to the name it bears now; names that stayed are left out."""


def renames(old: Pathway, new: Pathway) -> dict[StepId, StepId]:
    """Return the steps of a pathway that bear another name now, in document order."""
    found: dict[StepId, StepId] = {}
    gone = [step for name, step in old.steps.items() if name not in new.steps]
    come = [step for name, step in new.steps.items() if name not in old.steps]
    while True:
        into_old, into_new = _led_to_by(old, found), _led_to_by(new, {})
        before = len(found)
        for told_by in (
            lambda step, into, names: (view(step), _leads_to(step, names), into.get(step.id)),
            lambda step, into, names: view(step),
            lambda step, into, names: (_does(step), _leads_to(step, names), into.get(step.id)),
        ):
            _pair(gone, come, found, into_old, into_new, told_by)
            if len(found) > before:
                break
        else:
            return {name: found[name] for name in old.steps if name in found}


_TellsBy: TypeAlias = Callable[[Step, Mapping[StepId, Hashable], Renames], Hashable]


def _pair(
    gone: list[Step],
    come: list[Step],
    found: dict[StepId, StepId],
    into_old: Mapping[StepId, Hashable],
    into_new: Mapping[StepId, Hashable],
    told_by: _TellsBy,
) -> None:
    """Pair steps that are alike in one respect, where one alone on either side is so."""
    taken = set(found.values())
    old = _alone(told_by, ((s, into_old, found) for s in gone if s.id not in found))
    new = _alone(told_by, ((s, into_new, {}) for s in come if s.id not in taken))
    for key, name in old.items():
        if key in new:
            found[name] = new[key]


def _alone(
    told_by: _TellsBy, steps: Iterable[tuple[Step, Mapping[StepId, Hashable], Renames]]
) -> dict[Hashable, StepId]:
    names: dict[Hashable, list[StepId]] = {}
    for step, into, renamed in steps:
        names.setdefault(told_by(step, into, renamed), []).append(step.id)
    return {key: each[0] for key, each in names.items() if len(each) == 1}


def _does(step: Step) -> Hashable:
    """Return what a step has to keep to be told by its place."""
    match step:
        case Question():
            return "asks", step.ask
        case Action():
            return "does", tuple(line.act for line in step.lines)
        case Handover():
            return "hands over", step.to
        case Outcome():
            return "ends", tuple(line.act for line in step.owed)
        case Branch():
            return "branches", tuple(row.when for row in step.rows)


def _leads_to(step: Step, renamed: Renames) -> Hashable:
    return tuple((label, renamed.get(to, to)) for label, to in arrows(step))


def _led_to_by(pathway: Pathway, renamed: Renames) -> dict[StepId, Hashable]:
    into: dict[StepId, frozenset[tuple[StepId, str]]] = {}
    for name, step in pathway.steps.items():
        for label, to in arrows(step):
            into[to] = into.get(to, frozenset()) | {(renamed.get(name, name), label)}
    return dict(into)


def in_new_names(old: Library, renamed: Mapping[PathwayId, Renames]) -> Library:
    """Return a library with its steps called as they are called now."""
    pathways = {
        name: _renamed(pathway, renamed.get(name, {}), renamed)
        for name, pathway in old.pathways.items()
    }
    outcomes = {was: now for each in renamed.values() for was, now in each.items()}
    rules = {name: _rule(rule, outcomes) for name, rule in old.shared.rules.items()}
    return Library(replace(old.shared, rules=rules), pathways, old.local)


def _renamed(pathway: Pathway, names: Renames, everywhere: Mapping[PathwayId, Renames]) -> Pathway:
    def now(name: StepId) -> StepId:
        return names.get(name, name)

    steps = {
        now(name): _coming_back(
            replace(rewired(step, lambda _, to: now(to)), id=now(name)), everywhere
        )
        for name, step in pathway.steps.items()
    }
    chart = pathway.wall_chart
    if chart is not None:
        chart = WallChart(
            chart.use_when, tuple(map(now, chart.first)), tuple(map(now, chart.spine))
        )
    rules = {name: _rule(rule, names) for name, rule in pathway.words.rules.items()}
    return replace(
        pathway,
        start=now(pathway.start),
        steps=steps,
        wall_chart=chart,
        words=replace(pathway.words, rules=rules),
    )


def _coming_back(step: Step, everywhere: Mapping[PathwayId, Renames]) -> Step:
    names = everywhere.get(step.to) if isinstance(step, Handover) else None
    if not names or not isinstance(step, Handover):
        return step
    return replace(step, on_return=tuple((names.get(by, by), to) for by, to in step.on_return))


def _rule(rule: Rule, names: Renames) -> Rule:
    """Return a rule that speaks of outcomes as they are called now."""
    if not names:
        return rule

    def now(role: AnyOf) -> AnyOf:
        return tuple(
            replace(each, outcomes=tuple(names.get(name, name) for name in each.outcomes))
            for each in role
        )

    scope = replace(rule.scope, opens=now(rule.scope.opens), closes=now(rule.scope.closes))
    return replace(rule, of=now(rule.of), by=now(rule.by), scope=scope)
