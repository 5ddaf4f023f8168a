"""A handover to a pathway, or back from an outcome, that does not exist."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePath

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.model.step import Handover, Outcome

CODE = Code(
    "handover-to-nothing",
    Severity.ERROR,
    "A handover to a pathway or from an outcome that does not exist",
    "The team would be sent to a page that is not there.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every handover that names no pathway, or no outcome of it."""
    pathways = subject.library.pathways
    for step in subject.pathway.steps.values():
        if not isinstance(step, Handover):
            continue
        at = ("steps", step.id)
        if step.to not in pathways:
            yield _no_pathway(subject, step)
            continue
        if not subject.loaded.source(step.to).is_whole:
            continue
        steps = pathways[step.to].steps
        outcomes = [each.id for each in steps.values() if isinstance(each, Outcome)]
        for name, _ in step.on_return:
            if name not in outcomes:
                message = f"`{step.to}` has no outcome `{name}`"
                listed = ", ".join(f"`{each}`" for each in outcomes)
                advice = did_you_mean(name, outcomes, f"Its outcomes are {listed}.")
                where = (*at, "on return", name)
                yield subject.problem(CODE, where, message, advice, at_key=True)


def _no_pathway(subject: Subject, step: Handover) -> Problem:
    at = ("steps", step.id, "hand over to")
    for file in subject.loaded.files.values():
        if not file.is_whole and PurePath(file.shown_as).stem == step.to:
            message = f"the pathway `{step.to}` could not be read"
            return subject.problem(CODE, at, message, f"Put {file.shown_as} right first.")
    message = f"there is no pathway `{step.to}` in the library"
    otherwise = "Write its file, or end in an outcome here."
    advice = did_you_mean(step.to, subject.library.pathways, otherwise)
    return subject.problem(CODE, at, message, advice)
