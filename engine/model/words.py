"""The shared words: findings, acts, duties, kit, sources and safety rules."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from chamberwise.engine.model.rule import Rule

FindingId: TypeAlias = str
ValueId: TypeAlias = str
ActId: TypeAlias = str
SourceId: TypeAlias = str


class About(StrEnum):
    """What a finding is true of."""

    EYE = "eye"
    PATIENT = "patient"
    TEAM = "team"
    KIT = "kit"


class Mark(StrEnum):
    """How far a source was followed."""

    READ = "read"
    MEMORY = "memory"
    COMMON_PRACTICE = "common practice"
    DERIVED = "derived"
    LOCAL = "local"


@dataclass(frozen=True, slots=True)
class Value:
    """One value of a finding: the label to answer with and the sign by which it is told."""

    id: ValueId
    label: str
    sign: str = ""
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True)
class Choice:
    """What makes a finding a choice left to the unit: the suggestion and what the unit has set."""

    suggested: ValueId | None
    because: str
    chosen: ValueId | None


@dataclass(frozen=True, slots=True)
class Finding:
    """A finite set of values. A choice left to the unit is a finding whose value the unit sets."""

    id: FindingId
    title: str
    about: About
    values: tuple[Value, ...]
    may_change_by_itself: bool = False
    sources: tuple[SourceId, ...] = ()
    choice: Choice | None = None

    def value(self, value_id: ValueId) -> Value | None:
        """Return the value of that name, if there is one."""
        return next((value for value in self.values if value.id == value_id), None)


@dataclass(frozen=True, slots=True)
class Effects:
    """What becomes known (a finding and the values still possible) and what goes stale."""

    known: tuple[tuple[FindingId, tuple[ValueId, ...]], ...] = ()
    stale: tuple[FindingId, ...] = ()


NO_EFFECTS = Effects()


@dataclass(frozen=True, slots=True)
class Act:
    """The smallest thing that safety speaks of, with the effects it always has."""

    id: ActId
    title: str
    effects: Effects = NO_EFFECTS
    calls_for_help: bool = False
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True)
class Duty:
    """Who does or says something."""

    id: str
    title: str


@dataclass(frozen=True, slots=True)
class KitItem:
    """Something that must be to hand."""

    id: str
    title: str
    amount: str = ""
    why: str = ""
    sources: tuple[SourceId, ...] = ()


@dataclass(frozen=True, slots=True)
class Source:
    """A citation with its mark; `where` is the address at which it was read."""

    id: SourceId
    cite: str
    mark: Mark
    where: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Words:
    """A set of definitions by name: one vocabulary, or the own words of one pathway."""

    findings: Mapping[str, Finding] = field(default_factory=dict)
    acts: Mapping[str, Act] = field(default_factory=dict)
    duties: Mapping[str, Duty] = field(default_factory=dict)
    kit: Mapping[str, KitItem] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    rules: Mapping[str, Rule] = field(default_factory=dict)

    def over(self, shared: Words) -> Words:
        """Return these words with the shared ones behind them."""
        return Words(
            {**shared.findings, **self.findings},
            {**shared.acts, **self.acts},
            {**shared.duties, **self.duties},
            {**shared.kit, **self.kit},
            {**shared.sources, **self.sources},
            {**shared.rules, **self.rules},
        )
