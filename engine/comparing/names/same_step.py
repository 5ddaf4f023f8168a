"""Steps that bear another name now and are the same steps.

A step is told again by what is met at it, or by where it stands: what leads to it and where it
leads. Two that could each be the other are left apart, as one removed and one added.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping
from typing import TypeAlias

from chamberwise.engine.graph.arrows import arrows
from chamberwise.engine.graph.met import view
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Outcome,
    Question,
    Step,
    StepId,
)

Renames: TypeAlias = Mapping[StepId, StepId]
"""From the name of a step to the name it bears now; names that stayed are left out."""


def same_steps(old: Pathway, new: Pathway) -> dict[StepId, StepId]:
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
