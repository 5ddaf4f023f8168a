"""What a case hangs on: something taken for granted that would, were it otherwise, change it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.model.words import FindingId, ValueId


class Granted(StrEnum):
    """How something is taken for granted."""

    ASSUMED = "assumed"
    ASKED_AGAIN = "asked again"
    CHOICE = "local choice"


class Change(StrEnum):
    """What is otherwise."""

    PLAN = "plan"
    OUTCOME = "outcome"
    OPEN = "open"
    """The walk comes to a question that the table does not answer, or to no outcome."""


@dataclass(frozen=True, slots=True)
class Taken:
    """A finding and the value taken: assumed at first, or when asked again; or a choice not made.

    A choice has the value it is answered with while it is not made.
    """

    kind: Granted
    finding: FindingId
    value: ValueId


@dataclass(frozen=True, slots=True)
class Otherwise:
    """Another value, and what it changes. `once` is what must be otherwise as well."""

    value: ValueId
    changes: tuple[Change, ...]
    once: tuple[FindingId, ValueId] | None = None


@dataclass(frozen=True, slots=True)
class Hang:
    """Something taken for granted and each other value that changes the case."""

    taken: Taken
    others: tuple[Otherwise, ...]
