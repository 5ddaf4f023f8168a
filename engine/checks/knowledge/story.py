"""A walk to a state, told in one line."""

from __future__ import annotations

from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.exploration.program import DONE
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Question

LONGEST = 12


def story(library: Library, found: Explored, state: int) -> str:
    """Return the answers of a walk to a state, e.g. `stage: nucleus, vitreous: none`."""
    told = []
    for place, move in found.way_to(state):
        step = library.step(place)
        if move == DONE:
            told.append(_("{step} done").format(step=place.step))
        elif isinstance(step, Question):
            told.append(f"{step.ask}: {move}")
    if len(told) > LONGEST:
        told = [*told[: LONGEST // 2], "...", *told[-LONGEST // 2 :]]
    return ", ".join(told) if told else _("at the entry")
