"""From read values to names, conditions and effects."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.words import Effects

Raw = Mapping[str, Any]


def names(raw: Raw, key: str) -> tuple[str, ...]:
    """Return a list of names, one name counting as a list of one; unread items are left out."""
    return listed(raw.get(key, ()))


def listed(value: Any) -> tuple[str, ...]:
    """Return one name or several as several."""
    if isinstance(value, str):
        return (value,)
    return tuple(name for name in value or () if isinstance(name, str))


def effects(raw: Raw) -> Effects:
    """Return what becomes known and what goes stale."""
    known = tuple((name, listed(value)) for name, value in raw.get("makes known", {}).items())
    return Effects(known, names(raw, "makes stale"))


def condition(raw: Raw | None) -> Condition:
    """Return a condition: every finding named, with the values that satisfy it."""
    return Condition(tuple((name, listed(value)) for name, value in (raw or {}).items()))
