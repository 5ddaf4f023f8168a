"""What is never right, as rules that watch a run beside the pathway's own."""

from __future__ import annotations

from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.model.rule import Happening, HarmSeverity, Pattern, Rule, Scope


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
