"""A wall chart that names what it cannot show."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import WallChart
from chamberwise.engine.model.step import Action, StepId

CODE = Code(
    "not-on-the-chart",
    Severity.ERROR,
    N_("A wall chart that names what it cannot show"),
    N_("The chart could not be printed as it was meant."),
)
MOST_FIRST = 4


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for each name of the wall chart that is no step, no action or twice there."""
    chart = subject.pathway.wall_chart
    if chart is None:
        return
    for where, number, name in _named(chart):
        pointer: Pointer = ("wall chart", where, number)
        if name not in subject.written_steps:
            message = _("the wall chart names `{name}`, which is no step of this file").format(
                name=name
            )
            advice = did_you_mean(name, subject.written_steps, _("Name a step."))
            yield subject.problem(CODE, pointer, message, advice)
        elif where == "first" and not _is_action(subject, name):
            message = _("`{name}` stands among the first actions and is no action").format(
                name=name
            )
            yield subject.problem(CODE, pointer, message, _("Name a step that has `do`."))
    yield from _counted(subject, chart)


def _counted(subject: Subject, chart: WallChart) -> Iterator[Problem]:
    if len(chart.first) > MOST_FIRST:
        message = _("the wall chart has {count} first actions; four are remembered").format(
            count=len(chart.first)
        )
        advice = _("Keep the first four and move the others to `then`.")
        yield subject.problem(CODE, ("wall chart", "first", MOST_FIRST), message, advice)
    met: set[StepId] = set()
    for where, number, name in _named(chart):
        if name in met:
            message = _("the wall chart names `{name}` twice").format(name=name)
            yield subject.problem(CODE, ("wall chart", where, number), message, _("Keep one."))
        met.add(name)


def _named(chart: WallChart) -> Iterator[tuple[str, int, StepId]]:
    for where, names in (("first", chart.first), ("then", chart.spine)):
        for number, name in enumerate(names):
            yield where, number, name


def _is_action(subject: Subject, name: StepId) -> bool:
    return isinstance(subject.pathway.steps.get(name), Action)
