"""A caution that comes after the act it guards."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Action

if TYPE_CHECKING:
    import networkx as nx

CODE = Code(
    "caution-too-late",
    Severity.ERROR,
    N_("A caution after the act it guards"),
    N_("A warning read after the act has done its harm protects nobody."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every act that some walk does before any caution on it is read."""
    start = subject.pathway.start
    if start not in subject.graph:
        return
    for act, warned in _guards(subject).items():
        steps = {name for name, _place in warned}
        unwarned = _come_to(subject.graph, start, steps)
        doing = [name for name in subject.pathway.steps if _does(subject, name, act)]
        too_early = [name for name in doing if name in unwarned]
        if too_early:
            yield _too_late(subject, too_early, act, warned[0])
        if not doing:
            yield _guards_nothing(subject, act, warned[0])


def _come_to(graph: nx.MultiDiGraph[str], start: str, but_for: set[str]) -> set[str]:
    """Return the steps that arrows lead to without passing some others.

    A view of the graph without those would say the same, and takes ten times as long.
    """
    found = {start} - but_for
    waiting = list(found)
    while waiting:
        for name in graph.adj[waiting.pop()]:
            if name not in found and name not in but_for:
                found.add(name)
                waiting.append(name)
    return found


def _too_late(subject: Subject, names: list[str], act: str, warned: tuple[str, int]) -> Problem:
    step, place = warned
    shown = ", ".join(f"`{name}`" for name in names)
    message = _(
        "a walk can do `{act}` in {shown} before the caution on it in `{step}` is read"
    ).format(act=act, shown=shown, step=step)
    advice = _("Move the caution to `{step}`, or repeat it there.").format(step=names[0])
    at = ("steps", step, "cautions", place)
    notes = [subject.note(_("done here"), ("steps", name)) for name in names]
    return subject.problem(CODE, at, message, advice, notes=notes)


def _guards_nothing(subject: Subject, act: str, warned: tuple[str, int]) -> Problem:
    message = _("the caution guards `{act}`, which no step of this pathway does").format(act=act)
    advice = _("Name the act it guards, or leave `guards` out to guard its own step.")
    at = ("steps", warned[0], "cautions", warned[1], "guards")
    return subject.problem(CODE, at, message, advice)


def _guards(subject: Subject) -> dict[str, list[tuple[str, int]]]:
    """Return, by act, the steps that carry a caution on it and the caution's place there."""
    guards: dict[str, list[tuple[str, int]]] = {}
    for step in subject.pathway.steps.values():
        for place, caution in enumerate(step.cautions):
            if caution.guards and caution.guards in subject.words.acts:
                guards.setdefault(caution.guards, []).append((step.id, place))
    return guards


def _does(subject: Subject, name: str, act: str) -> bool:
    step = subject.pathway.steps[name]
    return isinstance(step, Action) and any(line.act == act for line in step.lines)
