"""What is never right, as rules that watch a run beside the pathway's own."""

from __future__ import annotations

from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.language.capitals import in_sentence
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.rule import Happening, HarmSeverity, Pattern, Rule, Scope


def never_right(scenario: Scenario) -> tuple[Rule, ...]:
    """Return a rule for each act that is never right: it must not be done."""
    return tuple(
        Rule(
            act,
            _("Never: {act}").format(act=in_sentence(scenario.title_of(act))),
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
