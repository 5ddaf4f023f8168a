"""A step that no walk can come to, by arrows alone."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.targets import all_targets
from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _

if TYPE_CHECKING:
    import networkx as nx

CODE = Code(
    "unreachable-step",
    Severity.ERROR,
    N_("A step that no arrow leads to"),
    N_("It was written because it matters, and no team will ever see it."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every step not reached from the entry that follows from no other such."""
    import networkx as nx

    graph, start = subject.graph, subject.pathway.start
    if start not in graph or _some_arrow_leads_nowhere(subject):
        return
    reached = subject.by_arrows
    told: set[str] = set()
    for name in _firsts(graph, reached):
        following = nx.descendants(graph, name) - reached - told - {name}
        told.update(following, (name,))
        message = _("no walk from `{start}` can come to `{name}`").format(start=start, name=name)
        if following:
            message += ngettext(
                ", nor to {count} that follows only from it",
                ", nor to {count} that follow only from it",
                len(following),
            ).format(count=len(following))
        advice = _("Lead an answer or an action here, or delete it.")
        yield subject.problem(CODE, ("steps", name), message, advice, at_key=True)


def _firsts(graph: nx.MultiDiGraph[str], reached: frozenset[str]) -> Iterator[str]:
    """Yield unreached steps from which the others follow, in document order."""
    import networkx as nx

    lost = graph.subgraph(name for name in graph if name not in reached)
    order = {name: place for place, name in enumerate(graph)}
    loops = nx.condensation(lost)
    firsts = [
        min(loops.nodes[loop]["members"], key=order.__getitem__)
        for loop in loops
        if not loops.in_degree(loop)
    ]
    yield from sorted(firsts, key=order.__getitem__)


def _some_arrow_leads_nowhere(subject: Subject) -> bool:
    """Whether an arrow, reported elsewhere, may have been meant for the step."""
    arrows = all_targets(subject.pathway)
    return any(target.step not in subject.pathway.steps for _step, target in arrows)
