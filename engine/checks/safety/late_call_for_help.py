"""Help is called within two steps of the entry, on every way."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.model.step import Action, StepId

CODE = Code(
    "late-call-for-help",
    Severity.WARNING,
    "Help is called late or not at all",
    "Kit and senior hands take minutes to arrive; those minutes begin when someone calls.",
)

MOST_STEPS = 2


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for the first step on a way that is too far from the entry without a call."""
    start = subject.pathway.start
    if start not in subject.graph:
        return
    front: list[StepId] = [start]
    met = {start}
    for distance in range(MOST_STEPS + 1):
        front = [name for name in front if not _calls(subject, name)]
        if distance == MOST_STEPS:
            break
        following = [after for name in front for after in subject.graph.successors(name)]
        front = [name for name in dict.fromkeys(following) if name not in met]
        met.update(front)
    for name in front:
        message = f"`{name}` is {MOST_STEPS} steps from the entry, and nobody has called for help"
        advice = "Add a line whose act calls for help to this step or to one before it."
        yield subject.problem(CODE, ("steps", name), message, advice, at_key=True)


def _calls(subject: Subject, name: StepId) -> bool:
    step = subject.pathway.steps[name]
    if not isinstance(step, Action):
        return False
    acts = (subject.words.acts.get(line.act or "") for line in step.lines)
    return any(act is not None and act.calls_for_help for act in acts)
