"""A loop on which no step has a bound."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity

CODE = Code(
    "loop-without-bound",
    Severity.ERROR,
    "A loop that may be walked without end",
    "Under stress a manoeuvre is repeated past the point of harm; a bound says when to stop.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield one problem for each set of steps that form loops free of any bound."""
    import networkx as nx

    bounded = {name for name, step in subject.pathway.steps.items() if step.bound}
    free = subject.graph.subgraph(name for name in subject.graph if name not in bounded)
    order = {name: place for place, name in enumerate(subject.pathway.steps)}
    loops = [
        component
        for component in nx.strongly_connected_components(free)
        if len(component) > 1 or any(free.has_edge(name, name) for name in component)
    ]
    for component in sorted(loops, key=lambda names: min(order[name] for name in names)):
        first = min(component, key=lambda name: order[name])
        round_trip = [edge[0] for edge in nx.find_cycle(free.subgraph(component), first)]
        shown = " -> ".join(f"`{name}`" for name in (*round_trip, round_trip[0]))
        message = f"this loop has no bound: {shown}"
        advice = f"Give one of its steps `at most:` and `after that:`, for example `{first}`."
        yield subject.problem(CODE, ("steps", first), message, advice, at_key=True)
