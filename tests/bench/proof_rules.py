"""Rules for the synthetic pathways: eight that speak of all groups, or eight for each group."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.rule import (
    AnyOf,
    Extent,
    Happening,
    HarmSeverity,
    Pattern,
    Rule,
    Scope,
)

from tests.bench.proof_synthetic import GROUPS, finding_of

EVERYWHERE = Scope()
BAD = ("partial", "full")


def eight_rules(findings: int = 5) -> tuple[Rule, ...]:
    """Return eight rules that hold, each of all groups at once."""
    return tuple(_rules(range(GROUPS), findings, "all"))


def sixty_four_rules(findings: int = 5) -> tuple[Rule, ...]:
    """Return eight rules that hold for each of the eight groups."""
    each = (_rules([group], findings, str(group)) for group in range(GROUPS))
    return tuple(rule for rules in each for rule in rules)


def _rules(groups: Sequence[int], findings: int, name: str) -> Iterator[Rule]:
    opened, filled, closed = (_done(kind, groups) for kind in ("open", "fill", "close"))
    cut, cleaned = _done("cut", groups), _done("clean", groups)
    unsafe = tuple(
        Happening(
            acts=(f"cut-{group}",),
            possibly=Condition(((finding_of(group, findings), BAD),)),
        )
        for group in groups
    )
    once_cleaned = Scope(Extent.AFTER_UNTIL, cleaned, closed)
    between = Scope(Extent.BETWEEN, opened, closed)
    after_fill = (*cut, *_done("press", groups))
    admitted = _done("admit", [0])
    yield _rule(f"absence-{name}", Pattern.ABSENCE, unsafe)
    yield _rule(f"precedence-{name}", Pattern.PRECEDENCE, cut, opened)
    yield _rule(f"alternate-{name}", Pattern.ALTERNATE_PRECEDENCE, closed, opened)
    yield _rule(f"response-{name}", Pattern.RESPONSE, opened, closed)
    yield _rule(f"after-each-{name}", Pattern.ABSENCE, unsafe, scope=once_cleaned)
    yield _rule(f"once-{name}", Pattern.BOUNDED_EXISTENCE, admitted, times=1)
    yield _rule(f"between-{name}", Pattern.EXISTENCE, filled, scope=between)
    yield _rule(f"directly-{name}", Pattern.CHAIN_RESPONSE, filled, after_fill)


def _done(kind: str, groups: Sequence[int]) -> AnyOf:
    return (Happening(acts=tuple(f"{kind}-{group}" for group in groups)),)


def _rule(
    name: str,
    pattern: Pattern,
    of: AnyOf,
    by: AnyOf = (),
    *,
    times: int = 0,
    scope: Scope = EVERYWHERE,
) -> Rule:
    severity = HarmSeverity.CRITICAL
    return Rule(name, name, pattern, of, by, times, scope, "Harm.", severity, "Hold still.")
