"""A step from which no outcome can be reached."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.ends import ends
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "no-way-out",
    Severity.ERROR,
    N_("A step from which no outcome can be reached"),
    N_("A team that comes here is trapped with the eye open."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every step that leads to no outcome and no handover for good."""
    import networkx as nx

    graph = subject.graph
    where = ends(subject.library, subject.pathway)
    layers = nx.bfs_layers(graph.reverse(copy=False), where) if where else ()
    leads_out = {name for layer in layers for name in layer}
    for name in graph:
        if name not in leads_out:
            message = _("no outcome can be reached from `{name}`").format(name=name)
            advice = _("Lead one of its arrows, or one further on, to an outcome.")
            yield subject.problem(CODE, ("steps", name), message, advice, at_key=True)
