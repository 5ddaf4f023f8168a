"""A safety rule: a published specification pattern over what happens on a walk.

Patterns and scopes bear the names of Dwyer, Avrunin and Corbett (ICSE 1999) and of Declare
(Di Ciccio and Montali 2022); what each means of a walk that ends stands in `engine.patterns`.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import PathwayId, StepId
from chamberwise.engine.model.words import ActId, FindingId, SourceId

RuleId: TypeAlias = str
ANY = "any"
"""Stands for every outcome of every pathway."""


ANYTHING = Condition(())


class Pattern(StrEnum):
    """The published patterns. The first six take a scope; the rest speak of the whole walk."""

    ABSENCE = "absence"
    UNIVERSALITY = "universality"
    EXISTENCE = "existence"
    BOUNDED_EXISTENCE = "bounded existence"
    PRECEDENCE = "precedence"
    RESPONSE = "response"
    ALTERNATE_PRECEDENCE = "alternate precedence"
    CHAIN_PRECEDENCE = "chain precedence"
    CHAIN_RESPONSE = "chain response"
    RESPONDED_EXISTENCE = "responded existence"
    NOT_CO_EXISTENCE = "not co-existence"


CHAINS = frozenset({Pattern.CHAIN_PRECEDENCE, Pattern.CHAIN_RESPONSE})
"""These say "directly": they pass over every moment in which no act is done."""


class Extent(StrEnum):
    """The scope in which a pattern must hold."""

    GLOBALLY = "globally"
    BEFORE = "before"
    AFTER = "after"
    BETWEEN = "between"
    AFTER_UNTIL = "after until"


class HarmSeverity(StrEnum):
    """How bad the harm is, in the five levels of the example of ISO/TR 24971, worst first."""

    CATASTROPHIC = "catastrophic"
    CRITICAL = "critical"
    SERIOUS = "serious"
    MINOR = "minor"
    NEGLIGIBLE = "negligible"


@dataclass(frozen=True, slots=True)
class Happening:
    """What a moment of a walk may show: everything that is said here at once.

    Of several names one suffices. What is known is always *surely* or *possibly*, never bare.
    """

    acts: tuple[ActId, ...] = ()
    by: tuple[str, ...] = ()
    warns_of: tuple[ActId, ...] = ()
    """Acts of which a danger or warning is shown at this moment."""
    asks: tuple[FindingId, ...] = ()
    outcomes: tuple[StepId, ...] = ()
    hands_over_to: tuple[PathwayId, ...] = ()
    surely: Condition = ANYTHING
    possibly: Condition = ANYTHING
    unless_surely: Condition = ANYTHING
    unless_possibly: Condition = ANYTHING
    known: tuple[FindingId, ...] = ()
    unless_known: tuple[FindingId, ...] = ()
    stale: tuple[FindingId, ...] = ()
    unknown: tuple[FindingId, ...] = ()

    @property
    def event(self) -> Happening:
        """The same without what has to be known or unknown."""
        return Happening(
            self.acts, self.by, self.warns_of, self.asks, self.outcomes, self.hands_over_to
        )


AnyOf: TypeAlias = tuple[Happening, ...]
"""One of several; none of them never happens."""


@dataclass(frozen=True, slots=True)
class Scope:
    """Where a pattern must hold: `opens` is Q of the published formulas, `closes` is R."""

    extent: Extent = Extent.GLOBALLY
    opens: AnyOf = ()
    closes: AnyOf = ()


@dataclass(frozen=True, slots=True)
class Rule:
    """One safety rule. `of` is P of the published formulas, `by` is S, `times` the bound."""

    id: RuleId
    title: str
    pattern: Pattern
    of: AnyOf
    by: AnyOf
    times: int
    scope: Scope
    harm: str
    severity: HarmSeverity
    instead: str
    sources: tuple[SourceId, ...] = ()
