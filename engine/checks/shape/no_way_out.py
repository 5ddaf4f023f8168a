"""A step from which no outcome can be reached."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.step import Handover, Outcome, Step

CODE = Code(
    "no-way-out",
    Severity.ERROR,
    "A step from which no outcome can be reached",
    "A team that comes here is trapped with the eye open.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every step that leads to no outcome and no handover for good."""
    import networkx as nx

    graph = subject.graph
    ends = [name for name, step in subject.pathway.steps.items() if _may_end(subject, step)]
    reversed_graph = graph.reverse(copy=False)
    leads_out = set(ends)
    for name in ends:
        if name in graph:
            leads_out |= {name}
    leads_out |= set(nx.multi_source_dijkstra_path_length(reversed_graph, ends)) if ends else set()
    for name in graph:
        if name not in leads_out:
            message = f"no outcome can be reached from `{name}`"
            advice = "Lead one of its arrows, or one further on, to an outcome."
            yield subject.problem(CODE, ("steps", name), message, advice, at_key=True)


def _may_end(subject: Subject, step: Step) -> bool:
    """Whether a walk may end here or goes where another check already reports a fault."""
    if isinstance(step, Outcome):
        return True
    if isinstance(step, Handover):
        there = subject.library.pathways.get(step.to)
        outcomes = (
            {each.id for each in there.steps.values() if isinstance(each, Outcome)}
            if there
            else set()
        )
        return not there or bool(outcomes - {name for name, _ in step.on_return})
    return any(target.step not in subject.pathway.steps for target in targets(step))
