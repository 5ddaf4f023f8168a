"""A bound whose exit leads straight back into the loop it should end."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity

CODE = Code(
    "loop-without-exit",
    Severity.ERROR,
    "A bound whose exit does not leave the loop",
    "When the bound is reached the team must stop; an exit back into the loop is none.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every bound whose exit can only come back to the bounded step."""
    import networkx as nx

    graph = subject.graph
    for step in subject.pathway.steps.values():
        exit_step = step.bound.after_that if step.bound else None
        if exit_step is None or exit_step not in graph:
            continue
        without = graph.subgraph(name for name in graph if name != step.id)
        leaves = exit_step != step.id and any(
            not graph.out_degree(name) for name in {exit_step, *nx.descendants(without, exit_step)}
        )
        if not leaves:
            message = f"`after that` of `{step.id}` leads back to it and never to an end"
            advice = "Lead it to a step that closes, refers or hands over."
            yield subject.problem(CODE, ("steps", step.id, "after that"), message, advice)
