"""What the proof says of each safety rule before and after a change."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import RuleId
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Holds, Unproven, Verdict, Violated


class Standing(StrEnum):
    """A verdict in the word that a report uses, or that there is no such rule."""

    BROKEN = "broken"
    UNPROVEN = "unproven"
    DOES_NOT_ARISE = "does not arise"
    NO_RULE = "no rule"
    HOLDS = "holds"


@dataclass(frozen=True, slots=True)
class Judged:
    """One rule, as the proof judged it before and judges it now."""

    rule: RuleId
    title: str
    was: Standing
    now: Standing

    @property
    def is_changed(self) -> bool:
        """Whether the verdict changed."""
        return self.was is not self.now


def judged(old: tuple[Library, PathwayId], new: tuple[Library, PathwayId]) -> tuple[Judged, ...]:
    """Return every rule of either side; rules that are gone come last."""
    before = {each.rule.id: each for each in prove(*old).verdicts}
    after = {each.rule.id: each for each in prove(*new).verdicts}
    return tuple(_judged(before, after))


def _judged(before: dict[RuleId, Verdict], after: dict[RuleId, Verdict]) -> Iterator[Judged]:
    for name in dict.fromkeys((*after, *before)):
        title = (after.get(name) or before[name]).rule.title
        yield Judged(name, title, _standing(before.get(name)), _standing(after.get(name)))


def _standing(verdict: Verdict | None) -> Standing:
    match verdict:
        case None:
            return Standing.NO_RULE
        case Holds(is_vacuous=vacuous):
            return Standing.DOES_NOT_ARISE if vacuous else Standing.HOLDS
        case Violated():
            return Standing.BROKEN
        case Unproven():
            return Standing.UNPROVEN
