"""A step that no walk can come to, by arrows alone."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.targets import all_targets

CODE = Code(
    "unreachable-step",
    Severity.ERROR,
    "A step that no arrow leads to",
    "It was written because it matters, and no team will ever see it.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every step that is not reached from the entry."""
    import networkx as nx

    graph, start = subject.graph, subject.pathway.start
    if start not in graph or _some_arrow_leads_nowhere(subject):
        return
    reached = nx.descendants(graph, start) | {start}
    for name in graph:
        if name not in reached:
            message = f"no walk from `{start}` can come to `{name}`"
            before = list(dict.fromkeys(graph.predecessors(name)))
            advice = "Lead an answer or an action here, or delete the step."
            if before and all(each not in reached for each in before):
                advice = f"`{before[0]}` leads here, but no walk comes to that step either."
            yield subject.problem(CODE, ("steps", name), message, advice, at_key=True)


def _some_arrow_leads_nowhere(subject: Subject) -> bool:
    """Whether an arrow, reported elsewhere, may have been meant for the step."""
    arrows = all_targets(subject.pathway)
    return any(target.step not in subject.pathway.steps for _, target in arrows)
