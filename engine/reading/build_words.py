"""From read values to the words of a file."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from chamberwise.engine.model.words import (
    About,
    Act,
    Choice,
    Duty,
    Finding,
    KitItem,
    Mark,
    Source,
    Value,
    Words,
)
from chamberwise.engine.reading.build_rules import rule
from chamberwise.engine.reading.build_values import Raw, effects, names

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
        _each(raw, "rules", rule),
    )


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
