"""What has to be told before any rule: a walk that cannot end, or a team left without an answer."""

from __future__ import annotations

from datetime import date
from functools import cache

from chamberwise.engine.checks.knowledge import (
    answers_cover,
    branch_cannot_decide,
    too_many_states,
    trapped,
)
from chamberwise.engine.checks.knowledge.at_sight import explored_from, safe_by_form
from chamberwise.engine.checks.registry import Check
from chamberwise.engine.checks.shape import loop_without_bound, loop_without_exit
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.exploration.bare import bare
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import Loaded

OF_LOOPS: tuple[Check, ...] = (loop_without_bound.check, loop_without_exit.check)
"""Where these are quiet every walk comes to an end."""

OF_STATES: tuple[Check, ...] = (
    too_many_states.check,
    answers_cover.check,
    branch_cannot_decide.check,
    trapped.check,
)
"""These look at every state, unless the form of the steps settles what they ask."""


def check_before_proof(loaded: Loaded, pathway: PathwayId, today: date) -> list[Problem]:
    """Return what makes walks from the entry of a pathway endless or undecided.

    The pathway has to be walkable. No acceptance silences these.
    """

    @cache
    def explored(entry: PathwayId) -> Explored:
        return explored_from(bare(loaded.library), entry)

    walked = bare(loaded.library)
    found: list[Problem] = []
    for name in reached_by_handover(loaded.library, pathway):
        about = Subject(loaded, loaded.library.pathways[name], today, (pathway,), explored)
        of_loops = [each for check in OF_LOOPS for each in check(about)]
        found += of_loops
        if of_loops or not safe_by_form(walked, walked.pathways[name], about.entries):
            found += [each for check in OF_STATES for each in check(about)]
    return list(dict.fromkeys(found))
