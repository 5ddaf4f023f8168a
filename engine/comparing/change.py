"""One change in meaning: of what, where, what it was and is, and how much hangs on it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.model.step import PathwayId


class Rating(StrEnum):
    """How much hangs on a change, the gravest first."""

    SAFETY = "safety"
    PROCEDURAL = "procedural"
    EDITORIAL = "editorial"

    @property
    def rank(self) -> int:
        """Return its place, 0 for the gravest."""
        return tuple(Rating).index(self)


def gravest(ratings: Iterable[Rating]) -> Rating:
    """Return the gravest of some ratings; of none, the least."""
    return min(ratings, key=lambda each: each.rank, default=Rating.EDITORIAL)


class Kind(StrEnum):
    """What changed, in a word that people use."""

    PATHWAY = "pathway"
    STANDING = "standing"
    TITLE = "title"
    SUMMARY = "summary"
    START = "entry"
    PHASE = "phase"
    STEP = "step"
    RENAMED = "name in the file"
    REUSED = "name used anew"
    ORDER = "order"
    QUESTION = "question"
    FINDING_ASKED = "finding asked"
    ANSWER = "answer"
    TARGET = "way on"
    ROW = "row of a branch"
    LINE = "instruction"
    SPOKEN = "spoken words"
    DUTY = "duty"
    ACT = "act"
    EFFECT = "effect"
    BOUND = "bound"
    CAUTION = "caution"
    OWED = "owed task"
    WHEN = "time"
    HANDOVER = "handover"
    KIT = "kit"
    CHOICE = "choice"
    TIME_TARGET = "time target"
    REASON = "reason"
    SHORT = "short wording"
    SOURCES = "sources"
    PLAN = "plan"
    CALCULATION = "calculation"
    FINDING = "finding"
    VALUE = "value"
    RULE = "rule"
    CASES = "table of cases"
    WALL_CHART = "wall chart"
    ACCEPTED = "accepted problem"
    UNIT = "unit"
    PHONE = "phone"
    PRODUCT = "local product"
    SHELF = "shelf and stock"
    PLACE = "local place"
    MACHINE = "machine page"


@dataclass(frozen=True, slots=True)
class Where:
    """A place: a pathway (none for shared words), a table such as `steps`, a name, and a part.

    Names are those of the new side, where it has them.
    """

    pathway: PathwayId | None
    table: str
    name: str = ""
    part: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """One change. What was not there before has an empty `was`; what is gone has an empty `now`."""

    kind: Kind
    rating: Rating
    at: Where
    was: str
    now: str
    why: str
    """Why it is rated so, as a clause."""
