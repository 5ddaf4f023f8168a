"""A loop on which no step has a bound."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.rings import has_ring
from chamberwise.engine.graph.round_trip import round_trip, shown
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Step

CODE = Code(
    "loop-without-bound",
    Severity.ERROR,
    N_("A loop that may be walked without end"),
    N_("Under stress a manoeuvre is repeated past the point of harm; a bound says when to stop."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield one problem for each set of steps that form loops free of any bound."""
    steps = subject.pathway.steps
    arrows = {
        step.id: [each.step for each in targets(step) if _is_free(steps.get(each.step))]
        for step in steps.values()
        if _is_free(step)
    }
    if not has_ring(arrows):
        return
    import networkx as nx

    free: nx.DiGraph[str] = nx.DiGraph()
    free.add_edges_from((name, after) for name, onward in arrows.items() for after in onward)
    order = {name: place for place, name in enumerate(steps)}
    loops = [
        component
        for component in nx.strongly_connected_components(free)
        if len(component) > 1 or any(free.has_edge(name, name) for name in component)
    ]
    for component in sorted(loops, key=lambda names: min(order[name] for name in names)):
        first = min(component, key=lambda name: order[name])
        message = _("this loop has no bound: {loop}").format(loop=shown(round_trip(free, first)))
        advice = _(
            "Give one of its steps `at most:` and `after that:`, for example `{first}`."
        ).format(first=first)
        yield subject.problem(CODE, ("steps", first), message, advice, at_key=True)


def _is_free(step: Step | None) -> bool:
    return step is not None and not step.bound
