"""How a library's findings lie side by side in one integer: one bit for each value.

Knowledge of a finding is the set of its values still possible, so a whole team's knowledge is one
number, a condition is one AND, and a state is cheap to copy and to compare.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Finding, FindingId, ValueId


@dataclass(frozen=True, slots=True)
class Field:
    """One finding's bits: `every` has all of them, `bits` one for each value."""

    finding: Finding
    every: int
    bits: Mapping[ValueId, int]

    def mask(self, values: Iterable[ValueId]) -> int:
        """Return the bits of some values; values the finding does not have count for nothing."""
        mask = 0
        for value in values:
            mask |= self.bits.get(value, 0)
        return mask

    def values(self, known: int) -> tuple[ValueId, ...]:
        """Return the values whose bits are set, in document order."""
        return tuple(value for value, bit in self.bits.items() if bit & known)


@dataclass(frozen=True, slots=True)
class Layout:
    """Every field of a library. Shared findings come first, then each pathway's own."""

    shared: Mapping[FindingId, Field]
    own: Mapping[PathwayId, Mapping[FindingId, Field]]
    every: int
    restless: tuple[Field, ...]
    """The findings that may change by themselves."""

    def field(self, pathway: PathwayId, finding: FindingId) -> Field:
        """Return the field of a finding as a pathway names it. Raises `KeyError` for no finding."""
        own = self.own[pathway]
        return own[finding] if finding in own else self.shared[finding]

    def fields(self, pathway: PathwayId) -> Iterable[Field]:
        """Return the fields a pathway can speak of."""
        return (*self.own[pathway].values(), *self.shared.values())


@lru_cache(maxsize=64)
def layout_of(library: Library) -> Layout:
    """Return the layout of a library; the same library always gets the same one."""
    width = 0

    def lay(findings: Mapping[FindingId, Finding]) -> dict[FindingId, Field]:
        nonlocal width
        fields = {}
        for name, finding in findings.items():
            bits = {value.id: 1 << (width + place) for place, value in enumerate(finding.values)}
            width += len(finding.values)
            fields[name] = Field(finding, sum(bits.values()), bits)
        return fields

    shared = lay(library.shared.findings)
    own = {name: lay(pathway.words.findings) for name, pathway in library.pathways.items()}
    every_field = [
        *shared.values(),
        *(field for fields in own.values() for field in fields.values()),
    ]
    restless = tuple(field for field in every_field if field.finding.may_change_by_itself)
    return Layout(shared, own, (1 << width) - 1, restless)
