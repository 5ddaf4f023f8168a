"""From read values to the words of a file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.words import (
    About,
    Act,
    Choice,
    Duty,
    Effects,
    Finding,
    KitItem,
    Mark,
    Source,
    Value,
    Words,
)

Raw = Mapping[str, Any]
_Built = TypeVar("_Built")


def words(raw: Raw) -> Words:
    """Return the words a file defines; a choice becomes a finding whose value the unit sets."""
    findings = _each(raw, "findings", _finding) | _each(raw, "choices", _choice)
    return Words(
        findings,
        _each(raw, "acts", _act),
        _each(raw, "duties", lambda name, value: Duty(name, value.get("title", name))),
        _each(raw, "kit", _kit),
        _each(raw, "sources", _source),
    )


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


def _each(raw: Raw, key: str, build: Callable[[str, Raw], _Built]) -> dict[str, _Built]:
    return {name: build(name, value) for name, value in raw.get(key, {}).items()}


def _finding(name: str, raw: Raw) -> Finding:
    values = tuple(
        Value(value, said.get("label", value), said.get("sign", ""), names(said, "sources"))
        for value, said in raw.get("values", {}).items()
    )
    return Finding(
        name,
        raw.get("title", name),
        About(raw.get("about", About.EYE)),
        values,
        raw.get("may change by itself", False),
        names(raw, "sources"),
    )


def _choice(name: str, raw: Raw) -> Finding:
    positions = tuple(
        Value(value, said.get("label", value), said.get("says", ""), names(said, "sources"))
        for value, said in raw.get("positions", {}).items()
    )
    choice = Choice(raw.get("suggested"), raw.get("because", ""), raw.get("chosen"))
    return Finding(name, raw.get("title", name), About.TEAM, positions, choice=choice)


def _act(name: str, raw: Raw) -> Act:
    calls = raw.get("calls for help", False)
    return Act(name, raw.get("title", name), effects(raw), calls, names(raw, "sources"))


def _kit(name: str, raw: Raw) -> KitItem:
    title, amount, why = raw.get("title", name), raw.get("amount", ""), raw.get("why", "")
    return KitItem(name, title, amount, why, names(raw, "sources"))


def _source(name: str, raw: Raw) -> Source:
    mark = Mark(raw.get("mark", Mark.MEMORY))
    return Source(name, raw.get("cite", name), mark, raw.get("where", ""), raw.get("note", ""))
