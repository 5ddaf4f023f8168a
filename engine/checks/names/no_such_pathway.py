"""A handover to a pathway, or back from an outcome, that does not exist."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePath

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Handover, Outcome

CODE = Code(
    "handover-to-nothing",
    Severity.ERROR,
    N_("A handover to a pathway or from an outcome that does not exist"),
    N_("The team would be sent to a page that is not there."),
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
        for name, _back in step.on_return:
            if name not in outcomes:
                message = _("`{pathway}` has no outcome `{name}`").format(
                    pathway=step.to, name=name
                )
                listed = ", ".join(f"`{each}`" for each in outcomes)
                advice = did_you_mean(
                    name, outcomes, _("Its outcomes are {listed}.").format(listed=listed)
                )
                where = (*at, "on return", name)
                yield subject.problem(CODE, where, message, advice, at_key=True)


def _no_pathway(subject: Subject, step: Handover) -> Problem:
    at = ("steps", step.id, "hand over to")
    for file in subject.loaded.files.values():
        if not file.is_whole and PurePath(file.shown_as).stem == step.to:
            message = _("the pathway `{pathway}` could not be read").format(pathway=step.to)
            return subject.problem(
                CODE, at, message, _("Put {file} right first.").format(file=file.shown_as)
            )
    message = _("there is no pathway `{pathway}` in the library").format(pathway=step.to)
    otherwise = _("Write its file, or end in an outcome here.")
    advice = did_you_mean(step.to, subject.library.pathways, otherwise)
    return subject.problem(CODE, at, message, advice)
