"""A condition: every finding it names has one of the values given. There is no bare comparison:

what a condition means of incomplete knowledge is always said as `surely` or `possibly`.
"""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.model.words import FindingId, ValueId


@dataclass(frozen=True, slots=True)
class Condition:
    """A conjunction over findings, each with the values that satisfy it."""

    terms: tuple[tuple[FindingId, tuple[ValueId, ...]], ...]
