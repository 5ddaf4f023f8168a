"""The checks that look at names, arrows and answers alone, and walk nothing."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from chamberwise.engine.checks.knowledge import answers_cover
from chamberwise.engine.checks.knowledge.at_sight import explored_from
from chamberwise.engine.checks.registry import NEEDED_TO_WALK, SHAPE, Check
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.exploration.bare import bare
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.library import Loaded

OF_FORM: tuple[Check, ...] = tuple(dict.fromkeys((*NEEDED_TO_WALK, *SHAPE, answers_cover.check)))


def errors_of_form(loaded: Loaded, pathway: PathwayId, today: date) -> Iterator[Problem]:
    """Yield the errors of a pathway that are seen without a walk."""
    own = loaded.library.pathways[pathway]
    subject = Subject(
        loaded, own, today, (), lambda name: explored_from(bare(loaded.library), name)
    )
    for check in OF_FORM:
        yield from (each for each in check(subject) if each.severity is Severity.ERROR)
