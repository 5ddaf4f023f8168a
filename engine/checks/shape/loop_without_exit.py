"""A bound whose exit leads back into the loop it should end."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.rings import has_ring
from chamberwise.engine.graph.round_trip import round_trip, shown
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

if TYPE_CHECKING:
    import networkx as nx

CODE = Code(
    "loop-without-exit",
    Severity.ERROR,
    N_("A bound whose exit does not leave the loop"),
    N_("When the bound is reached the team must stop; an exit back into the loop is none."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every bound whose exit can come back once all bounds are used up."""
    arrows = {
        step.id: [step.bound.after_that] if step.bound else [each.step for each in targets(step)]
        for step in subject.pathway.steps.values()
    }
    if not has_ring(arrows):
        return
    import networkx as nx

    used_up: nx.DiGraph[str] = nx.DiGraph()
    used_up.add_edges_from((name, after) for name, onward in arrows.items() for after in onward)
    looping = _on_loops(used_up)
    for step in subject.pathway.steps.values():
        if step.bound and step.id in looping:
            loop = shown(round_trip(used_up, step.id))
            message = _("with its bound used up, `{step}` still goes round: {loop}").format(
                step=step.id, loop=loop
            )
            advice = _("Lead `after that` to a step that closes, refers or hands over.")
            yield subject.problem(CODE, ("steps", step.id, "after that"), message, advice)


def _on_loops(graph: nx.DiGraph[str]) -> set[str]:
    import networkx as nx

    components = nx.strongly_connected_components(graph)
    loops = {name for component in components if len(component) > 1 for name in component}
    return loops | {name for name in graph if graph.has_edge(name, name)}
