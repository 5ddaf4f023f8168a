"""What bears a name, and what each thing is called now."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeAlias

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Words


class Sort(StrEnum):
    """What a name is the name of."""

    STEP = "step"
    PHASE = "phase"
    ANSWER = "answer"
    FINDING = "finding"
    VALUE = "value"
    ACT = "act"
    DUTY = "duty"
    KIT = "kit"
    SOURCE = "source"
    RULE = "rule"


TABLES = {
    Sort.FINDING: "findings",
    Sort.ACT: "acts",
    Sort.DUTY: "duties",
    Sort.KIT: "kit",
    Sort.SOURCE: "sources",
    Sort.RULE: "rules",
}
"""The tables of words, by what they list."""


@dataclass(frozen=True, slots=True)
class Named:
    """One thing as the old version calls it; `pathway` is none for shared words.

    `of` is the finding of a value, the step of an answer.
    """

    pathway: PathwayId | None
    sort: Sort
    name: str
    of: str = ""


Names: TypeAlias = Mapping[Named, str]
"""From each thing that bears another name now to that name; no name is given twice."""


@dataclass(frozen=True, slots=True)
class Calls:
    """What one pathway, or the shared words, call each thing now.

    `outcomes` are steps of any pathway, which rules may speak of.
    """

    names: Mapping[tuple[Sort, str, str], str] = field(default_factory=dict)
    outcomes: Mapping[str, str] = field(default_factory=dict)

    def now(self, sort: Sort, name: str, of: str = "") -> str:
        """Return what a thing is called now."""
        return self.names.get((sort, of, name), name)

    def each(self, sort: Sort, names: tuple[str, ...], of: str = "") -> tuple[str, ...]:
        """Return what several things are called now, in their order."""
        return tuple(self.now(sort, name, of) for name in names)


def calls_of(library: Library, names: Names, pathway: PathwayId | None) -> Calls:
    """Return what a pathway calls each thing now; a word of its own hides a shared one."""
    own = library.pathways[pathway].words if pathway is not None else Words()
    found = {
        (each.sort, each.of, each.name): now
        for each, now in names.items()
        if each.pathway == pathway or (each.pathway is None and not _hides(own, each))
    }
    return Calls(found, {each.name: now for each, now in names.items() if each.sort is Sort.STEP})


def _hides(own: Words, shared: Named) -> bool:
    sort, name = (Sort.FINDING, shared.of) if shared.of else (shared.sort, shared.name)
    return sort in TABLES and name in getattr(own, TABLES[sort])
