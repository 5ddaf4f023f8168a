"""Cautions as shown: the signal word, the harm, the right thing to do, and what they guard."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Action, Caution
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.cautions import cautions_shown
from chamberwise.exports.record.naming import act_title


@dataclass(frozen=True, slots=True)
class CautionView:
    """One caution. `before` names the act it guards where that act comes later."""

    signal: str
    harm: str
    instead: str
    before: str


def cautions(walk: Walk) -> tuple[CautionView, ...]:
    """Return the cautions to be read before the step stood on is carried out."""
    return tuple(
        CautionView(
            caution.signal.value, caution.harm, caution.instead, _before(walk, place, caution)
        )
        for place, caution in cautions_shown(walk.library, walk.last)
    )


def _before(walk: Walk, place: Place, caution: Caution) -> str:
    if caution.guards is None:
        return ""
    step = walk.step
    if isinstance(step, Action) and any(line.act == caution.guards for line in step.lines):
        return ""
    return act_title(walk.library.words(place.pathway), caution.guards)
