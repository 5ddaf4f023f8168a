"""From read values to the safety rules of a file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from chamberwise.engine.model.rule import (
    AnyOf,
    Extent,
    Happening,
    HarmSeverity,
    Pattern,
    Rule,
    Scope,
)
from chamberwise.engine.reading.build_values import Raw, condition, names
from chamberwise.engine.reading.form_rules import ROLES, TIMES


def rule(name: str, raw: Raw) -> Rule:
    """Return a rule, all of which could be read."""
    pattern = next(each for each in Pattern if each in raw)
    roles: Raw = raw[pattern]
    of, by = ROLES[pattern]
    return Rule(
        id=name,
        title=raw["title"],
        pattern=pattern,
        of=_any_of(roles[of]),
        by=_any_of(roles[by]) if by is not None else (),
        times=roles.get(TIMES, 0),
        scope=_scope(raw.get("scope")),
        harm=raw["harm"],
        severity=HarmSeverity(raw["severity"]),
        instead=raw["instead"],
        sources=names(raw, "sources"),
    )


def _scope(raw: Raw | None) -> Scope:
    raw = raw or {}
    if "between" in raw:
        return Scope(Extent.BETWEEN, _any_of(raw["between"]), _any_of(raw.get("and")))
    if "after each" in raw:
        return Scope(Extent.AFTER_UNTIL, _any_of(raw["after each"]), _any_of(raw.get("until")))
    if "after" in raw:
        return Scope(Extent.AFTER, _any_of(raw["after"]))
    if "before" in raw:
        return Scope(Extent.BEFORE, closes=_any_of(raw["before"]))
    return Scope()


def _any_of(raw: Any) -> AnyOf:
    if isinstance(raw, str):
        return (Happening(acts=(raw,)),)
    several = raw if isinstance(raw, list | tuple) else [raw]
    return tuple(_happening(each) for each in several if isinstance(each, Mapping))


def _happening(raw: Raw) -> Happening:
    return Happening(
        acts=names(raw, "act"),
        by=names(raw, "by"),
        warns_of=names(raw, "warns of"),
        asks=names(raw, "asks"),
        outcomes=names(raw, "outcome"),
        hands_over_to=names(raw, "hands over to"),
        surely=condition(raw.get("surely")),
        possibly=condition(raw.get("possibly")),
        unless_surely=condition(raw.get("unless surely")),
        unless_possibly=condition(raw.get("unless possibly")),
        known=names(raw, "known"),
        unless_known=names(raw, "unless known"),
        stale=names(raw, "stale"),
        unknown=names(raw, "unknown"),
    )
