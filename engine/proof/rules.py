"""Which rules bind a pathway, and where an operation ends."""

from __future__ import annotations

from collections.abc import Mapping

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.local import SwitchedOff
from chamberwise.engine.model.rule import Rule, RuleId
from chamberwise.engine.model.step import Handover, PathwayId, StepId


def rules_for(library: Library, pathway: PathwayId) -> tuple[Rule, ...]:
    """Return the house rules, then the pathway's own; no own rule takes a house rule's place.

    A rule that the unit has switched off is left out: `switched_off` names it.
    """
    off = switched_off(library, pathway)
    return tuple(rule for rule in _every_rule(library, pathway) if rule.id not in off)


def switched_off(library: Library, pathway: PathwayId) -> Mapping[RuleId, tuple[Rule, SwitchedOff]]:
    """Return the rules that would bind a pathway and that its unit has switched off."""
    local = library.local_to(pathway)
    if local is None:
        return {}
    every = {rule.id: rule for rule in _every_rule(library, pathway)}
    return {name: (every[name], each) for name, each in local.switched_off.items() if name in every}


def _every_rule(library: Library, pathway: PathwayId) -> tuple[Rule, ...]:
    own = library.pathways[pathway].words.rules
    house = library.shared.rules
    return (*house.values(), *(rule for name, rule in own.items() if name not in house))


def comes_back_by(library: Library, pathway: PathwayId) -> frozenset[StepId]:
    """Return the outcomes by which a pathway comes back to one that handed over to it.

    There the operation goes on: what is still owed is judged in the walks that go through.
    """
    return frozenset(
        outcome
        for other in library.pathways.values()
        for step in other.steps.values()
        if isinstance(step, Handover) and step.to == pathway
        for outcome, _ in step.on_return
    )
