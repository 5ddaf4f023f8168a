"""Which safety rules a run broke, and by which act: the rules' own machines, over its moments.

Rules that speak of a warning shown, or of what comes next on the chart, are not of the team and are
left out. What is seen without looking counts as looked at before each act.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.standing import Standing
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.rule import (
    CHAINS,
    AnyOf,
    Happening,
    HarmSeverity,
    Pattern,
    Rule,
    Scope,
)
from chamberwise.engine.model.words import ActId, FindingId
from chamberwise.engine.proof.trace import is_lost


@dataclass(frozen=True, slots=True)
class BrokenRule:
    """A rule that can no longer be kept, and the act at which it broke, if it was one."""

    rule: Rule
    act: ActId | None
    moment: int
    """Which moment of the drill, counted from 0."""


def never_right(scenario: Scenario) -> tuple[Rule, ...]:
    """Return a rule for each act that is never right: it must not be done."""
    return tuple(
        Rule(
            act,
            f"Never: {scenario.title_of(act).lower()}",
            Pattern.ABSENCE,
            (Happening(acts=(act,)),),
            (),
            1,
            Scope(),
            harm.why,
            HarmSeverity.SERIOUS,
            harm.instead,
            harm.sources,
        )
        for act, harm in scenario.harms.items()
    )


def broken_rules(scenario: Scenario, standing: Standing) -> tuple[BrokenRule, ...]:
    """Return the rules broken, in the order in which they broke."""
    rules = scenario.library.words(scenario.pathway).rules.values()
    found = [_lost(scenario, standing, rule) for rule in rules if not _is_of_the_chart(rule)]
    return tuple(sorted(filter(None, found), key=lambda each: each.moment))


def _lost(scenario: Scenario, standing: Standing, rule: Rule) -> BrokenRule | None:
    numbered = list(_moments(scenario, standing, rule))
    moments = [moment for _, moment in numbered]
    at = is_lost(scenario.library, scenario.pathway, rule, moments)
    return None if at is None else BrokenRule(rule, moments[at].act, numbered[at][0])


def _moments(scenario: Scenario, standing: Standing, rule: Rule) -> Iterator[tuple[int, Moment]]:
    """Yield the moments of a drill, with glances before each act where the rule asks for them."""
    glances = [each for each in scenario.book.at_a_glance if _asks(rule.by, each)]
    others = (*rule.of, *rule.scope.opens, *rule.scope.closes)
    for number, moment in enumerate(standing.moments):
        if moment.act is not None:
            for finding in glances:
                if not _asks(others, finding):
                    yield number, replace(moment, act=None, by=None, asks=finding)
        yield number, moment


def _asks(any_of: AnyOf, finding: FindingId) -> bool:
    return any(finding in each.asks for each in any_of)


def _is_of_the_chart(rule: Rule) -> bool:
    said = (*rule.of, *rule.by, *rule.scope.opens, *rule.scope.closes)
    return rule.pattern in CHAINS or any(each.warns_of for each in said)
