"""What is proved of a pathway: for each rule whether it holds, and if not, on which walk."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.meaning.state import Move
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import PathwayId


@dataclass(frozen=True, slots=True)
class Counterexample:
    """A shortest walk that breaks a rule, as moves from the entry of a pathway.

    `moment` counts the moments of the whole walk from 0: there the rule broke. It is `None` where
    the walk came to its end and what the rule asks for had not come.
    """

    pathway: PathwayId
    moves: tuple[Move, ...]
    moment: int | None


@dataclass(frozen=True, slots=True)
class Holds:
    """No walk breaks the rule. It is vacuous where no walk ever comes to what the rule is of."""

    rule: Rule
    is_vacuous: bool = False


@dataclass(frozen=True, slots=True)
class Violated:
    """Some walk breaks the rule."""

    rule: Rule
    counterexample: Counterexample


@dataclass(frozen=True, slots=True)
class Unproven:
    """Neither is known; `reason` says which bound stopped the proof."""

    rule: Rule
    reason: str


Verdict: TypeAlias = Holds | Violated | Unproven


@dataclass(frozen=True, slots=True)
class Proof:
    """The verdicts on one pathway, in the order of the rules, and how many states were seen.

    A state is a step at which a move is due, or an outcome, with all that is known there.
    """

    pathway: PathwayId
    states: int
    verdicts: tuple[Verdict, ...]
