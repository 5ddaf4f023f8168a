"""What the measure tells: how many mutants were killed, by what, and which survived."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.model.step import PathwayId


class OfKind(NamedTuple):
    """Of one kind of edit: mutants made, killed, and those no team could tell from the original."""

    kind: str
    made: int
    killed: int
    same: int = 0


@dataclass(frozen=True, slots=True)
class Survivor:
    """A mutant that no check and no rule told from the pathway."""

    id: str
    kind: str
    description: str
    reason: str | None
    """Why it is harmless, by the reviewed list; `None` where it is not on the list."""


@dataclass(frozen=True, slots=True)
class Strength:
    """How strong the checks and rules are over one pathway.

    Reviewed survivors do not count as killed. What looks the same on every walk is no survivor.
    """

    pathway: PathwayId
    total: int
    killed: tuple[OfKind, ...]
    """By kind of edit, in the order in which edits are made."""
    by: Mapping[str, int]
    """Mutants killed, by the slug of the check or the id of the rule; most first."""
    survivors: tuple[Survivor, ...]
    stale: tuple[str, ...] = ()
    """Entries of the reviewed list whose mutant is killed by now or no longer exists.

    Told of a whole measure only: a sample cannot know.
    """
    problems: tuple[Problem, ...] = ()
    """What is wrong with the form of the reviewed list."""

    @property
    def share(self) -> float:
        """How many of the mutants that a team could tell from the original are killed, 0 to 1."""
        differing = sum(each.made - each.same for each in self.killed)
        return sum(each.killed for each in self.killed) / differing if differing else 1.0

    @property
    def unreviewed(self) -> tuple[Survivor, ...]:
        """The survivors that nobody has looked at."""
        return tuple(each for each in self.survivors if each.reason is None)

    @property
    def is_clean(self) -> bool:
        """Whether every survivor is reviewed and every entry of the list still needed."""
        return not self.unreviewed and not self.stale and not self.problems
