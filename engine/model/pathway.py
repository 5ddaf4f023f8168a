"""A pathway: one complication's management, with one entry and named outcomes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import PathwayId, Step, StepId
from chamberwise.engine.model.words import FindingId, ValueId, Words


class Status(StrEnum):
    """Where a pathway stands in its life."""

    DRAFT = "draft"
    CLINICAL_REVIEW = "clinical review"
    APPROVED = "approved"
    SUPERSEDED = "superseded"
    WITHDRAWN = "withdrawn"


@dataclass(frozen=True, slots=True)
class Impossible:
    """A combination of findings that cannot be, and why; it must lead to a second look."""

    when: Condition
    because: str


@dataclass(frozen=True, slots=True)
class CaseTable:
    """What the table of cases runs over, and how everything else is answered."""

    over: tuple[FindingId, ...]
    assume: tuple[tuple[FindingId, ValueId], ...] = ()
    asked_again: tuple[tuple[FindingId, ValueId], ...] = ()
    impossible: tuple[Impossible, ...] = ()


@dataclass(frozen=True, slots=True)
class WallChart:
    """What the wall chart shows of a pathway: its steps in order; the arrows follow from them."""

    use_when: str
    first: tuple[StepId, ...]
    """The actions done from memory before anybody reads on."""
    spine: tuple[StepId, ...]


@dataclass(frozen=True, slots=True)
class Acceptance:
    """A reported problem that the author accepts, and why."""

    check: str
    at: str
    reason: str


@dataclass(frozen=True, slots=True)
class Seal:
    """What an approval was given to: the digest of the content, and those of its parts."""

    content: str
    parts: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Pathway:
    """The whole of one file. `steps` and `phases` keep document order."""

    id: PathwayId
    title: str
    summary: str
    edition: str
    status: Status
    authors: tuple[str, ...]
    approved_by: str | None
    approved_on: date | None
    reviewed: date
    review_by: date
    start: StepId
    phases: Mapping[str, str]
    steps: Mapping[StepId, Step]
    words: Words
    cases: CaseTable | None
    accepted: tuple[Acceptance, ...]
    wall_chart: WallChart | None = None
    reason_for_change: str = ""
    seal: Seal | None = None

    @property
    def is_approved(self) -> bool:
        """Whether someone stands for it by name; otherwise it shows as a draft."""
        return self.status is Status.APPROVED and bool(self.approved_by)
