"""What a comparison says, as plain values. Renderers see nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from chamberwise.exports.stamp.content import CopyShown


class Weight(StrEnum):
    """How much hangs on a change, the gravest first."""

    SAFETY = "safety"
    PROCEDURAL = "procedural"
    EDITORIAL = "editorial"


@dataclass(frozen=True, slots=True)
class ChangeShown:
    """One change: where it is in words, what it was, what it is now, and why it is rated so."""

    weight: Weight
    kind: str
    pathway: str
    """Empty for shared words."""
    place: str
    """By names, e.g. `steps/hold-still, answer none`."""
    where: str
    was: str
    now: str
    why: str


@dataclass(frozen=True, slots=True)
class MoveShown:
    """One move of a walk: what was met, and the answer given, if it was a question."""

    number: int
    lead: str
    text: str
    answer: str = ""
    passed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class MetShown:
    """What is met after the same moves: the step by name, and all that is said there."""

    place: str
    lead: str
    text: str
    lines: tuple[str, ...] = ()
    passed: tuple[str, ...] = ()
    """What was passed silently on the way to it."""


@dataclass(frozen=True, slots=True)
class WalkShown:
    """A shortest walk after which the versions differ."""

    moves: tuple[MoveShown, ...]
    was: MetShown
    now: MetShown


@dataclass(frozen=True, slots=True)
class VerdictShown:
    """A rule whose verdict changed."""

    rule: str
    title: str
    was: str
    now: str


@dataclass(frozen=True, slots=True)
class CaseShown:
    """Cases that changed together: how many, the first of them in words, and both results."""

    count: int
    example: str
    was: str
    now: str


@dataclass(frozen=True, slots=True)
class DrillShown:
    """A scenario to be repeated: its pathway and its name as they are typed, and its title."""

    pathway: str
    name: str
    title: str


@dataclass(frozen=True, slots=True)
class MendShown:
    """A line of a local sheet that names what is called otherwise now; `now` is empty if gone."""

    file: str
    line: int
    was: str
    now: str


@dataclass(frozen=True, slots=True)
class ComparisonShown:
    """Two versions of one pathway."""

    pathway: str
    title: str
    was: str
    """The old version in words: edition and standing."""
    now: str
    dated: str
    """The new version in words, with its dates and who stands for it."""
    changes: tuple[ChangeShown, ...]
    behaviour: str
    """Whether walks differ, as a sentence."""
    walk: WalkShown | None
    verdicts: tuple[VerdictShown, ...]
    standing: str
    """How many rules have which verdict now; empty where nothing was proved."""
    cases: tuple[CaseShown, ...]
    reprint: tuple[str, ...]
    """Titles of the pathways whose sheets say something else now."""
    take_down: tuple[CopyShown, ...]
    rehearse: tuple[str, ...]
    """Titles of the pathways whose walks are to be rehearsed again."""
    drills: tuple[DrillShown, ...]
    """The scenarios written by hand for those."""
    acts: tuple[str, ...]
    cards: tuple[str, ...]
    """Duties whose role cards changed."""
    mend: tuple[MendShown, ...] = ()

    def of(self, weight: Weight) -> tuple[ChangeShown, ...]:
        """Return the changes of one weight."""
        return tuple(each for each in self.changes if each.weight is weight)
