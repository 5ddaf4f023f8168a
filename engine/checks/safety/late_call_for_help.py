"""Help is called within two steps of the entry, on every way."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Action, StepId

CODE = Code(
    "late-call-for-help",
    Severity.WARNING,
    N_("Help is called late or not at all"),
    N_("Kit and senior hands take minutes to arrive; those minutes begin when someone calls."),
)

MOST_STEPS = 2


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every step two steps from the entry on a way without a call."""
    start = subject.pathway.start
    if start not in subject.graph:
        return
    ways: list[tuple[StepId, ...]] = [(start,)]
    for _step in range(MOST_STEPS):
        ways = [
            (*way, after)
            for way in ways
            if not _calls(subject, way[-1])
            for after in subject.graph.successors(way[-1])
            if after not in way
        ]
    for name in dict.fromkeys(way[-1] for way in ways):
        if _calls(subject, name):
            continue
        message = _(
            "`{name}` comes {count} steps after the entry, and nobody has called for help"
        ).format(name=name, count=MOST_STEPS)
        advice = _("Add a line whose act calls for help to this step or to one before it.")
        yield subject.problem(CODE, ("steps", name), message, advice, at_key=True)


def _calls(subject: Subject, name: StepId) -> bool:
    step = subject.pathway.steps[name]
    if not isinstance(step, Action):
        return False
    acts, names = subject.words.acts, (line.act for line in step.lines if line.act)
    return any(name not in acts or acts[name].calls_for_help for name in names)
