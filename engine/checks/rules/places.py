"""Where each happening that a rule speaks of stands in its file."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.rule import AnyOf, Extent, Happening, Rule
from chamberwise.engine.model.words import FindingId
from chamberwise.engine.reading.form_rules import ROLES

SCOPE_KEYS: dict[Extent, tuple[str, str]] = {
    Extent.GLOBALLY: ("", ""),
    Extent.BEFORE: ("", "before"),
    Extent.AFTER: ("after", ""),
    Extent.BETWEEN: ("between", "and"),
    Extent.AFTER_UNTIL: ("after each", "until"),
}
"""The keys under `scope` that open it and close it."""


@dataclass(frozen=True, slots=True)
class Said:
    """One happening of a rule: the key it stands under, and where."""

    key: str
    happening: Happening
    pointer: Pointer


def happenings(rule: Rule) -> Iterator[Said]:
    """Yield every happening that a rule names, in document order; those of its scope last."""
    at: Pointer = ("rules", rule.id)
    of, by = ROLES[rule.pattern]
    opens, closes = SCOPE_KEYS[rule.scope.extent]
    yield from _each(rule.of, (*at, str(rule.pattern)), of)
    yield from _each(rule.by, (*at, str(rule.pattern)), by or "")
    yield from _each(rule.scope.opens, (*at, "scope"), opens)
    yield from _each(rule.scope.closes, (*at, "scope"), closes)


def _each(any_of: AnyOf, at: Pointer, key: str) -> Iterator[Said]:
    for place, happening in enumerate(any_of):
        yield Said(key, happening, (*at, key) if len(any_of) == 1 else (*at, key, place))


def conditions(happening: Happening) -> Iterator[tuple[str, Condition]]:
    """Yield what has to be known of values, each by its key."""
    yield "surely", happening.surely
    yield "possibly", happening.possibly
    yield "unless surely", happening.unless_surely
    yield "unless possibly", happening.unless_possibly


def known_or_not(happening: Happening) -> Iterator[tuple[str, tuple[FindingId, ...]]]:
    """Yield the findings that have to be known, stale or unknown, each list by its key."""
    yield "known", happening.known
    yield "unless known", happening.unless_known
    yield "stale", happening.stale
    yield "unknown", happening.unknown
