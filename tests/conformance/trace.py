"""What happened on a walk, as rules read it: asked, done, owed, ended, each with what was known.

A real trace is told by `driver`; a doctored one is written by hand with `asked`, `did`, `owed` and
`ended`, so that every rule can be shown to fail.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Protocol

from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library


class Known(Protocol):
    """What a team knows: the values of a finding that are still possible."""

    def left(self, finding: str) -> frozenset[str] | None:
        """Return the values still possible, `None` where nothing is known."""


def surely(known: Known, finding: str, *values: str) -> bool:
    left = known.left(finding)
    return left is not None and left <= set(values)


def possibly(known: Known, finding: str, *values: str) -> bool:
    left = known.left(finding)
    return left is None or bool(left & set(values))


@dataclass(frozen=True)
class KnownOnWalk:
    """The knowledge of a real state, before what the step itself changes."""

    library: Library
    state: State

    def left(self, finding: str) -> frozenset[str] | None:
        field = layout_of(self.library).field(self.state.place.pathway, finding)
        possible = self.state.possible & field.every
        return None if possible == field.every else frozenset(field.values(possible))


@dataclass(frozen=True)
class KnownByHand:
    """Knowledge written down for a doctored trace; what is not written is not known."""

    values: dict[str, frozenset[str]] = field(default_factory=dict)

    def left(self, finding: str) -> frozenset[str] | None:
        return self.values.get(finding)


@dataclass(frozen=True)
class Event:
    """One thing that happened: `kind` is asked, did, owed or ended."""

    kind: str
    name: str
    """The finding asked, the act done or owed, or the outcome's step."""
    known: Known
    answer: str = ""
    step: str = ""


@dataclass(frozen=True)
class Trace:
    """Everything that happened from a pathway's entry to an outcome."""

    entry: str
    events: tuple[Event, ...]

    @cached_property
    def _places(self) -> dict[tuple[str, str], list[int]]:
        places: dict[tuple[str, str], list[int]] = {}
        for place, event in enumerate(self.events):
            places.setdefault((event.kind, event.name), []).append(place)
        return places

    def where(self, kind: str, *names: str) -> list[int]:
        """Return where anything of a kind with one of these names happened, in order."""
        return sorted(place for name in names for place in self._places.get((kind, name), ()))

    def did(self, *acts: str) -> list[int]:
        """Return where any of the acts was done."""
        return self.where("did", *acts)

    def acts(self) -> list[str]:
        """Return the acts done, in order."""
        return [event.name for event in self.events if event.kind == "did"]

    @property
    def end(self) -> Event:
        """Return the outcome."""
        return self.events[-1]


def by_hand(**known: str) -> KnownByHand:
    """Return knowledge from `main_wound="sealed sutured"`."""
    return KnownByHand(
        {name.replace("_", "-"): frozenset(values.split()) for name, values in known.items()}
    )


def did(act: str, **known: str) -> Event:
    return Event("did", act, by_hand(**known))


def asked(finding: str, answer: str, **known: str) -> Event:
    return Event("asked", finding, by_hand(**known), answer.replace("_", " "))


def owed(act: str) -> Event:
    return Event("owed", act, by_hand())


def ended(outcome: str, **known: str) -> Event:
    return Event("ended", outcome, by_hand(**known))


def doctored(*events: Event, entry: str = "posterior-capsule-rupture") -> Trace:
    return Trace(entry, events)
