"""Not too many questions in a row."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.flow import Flow
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Outline


def in_a_row(flow: Flow) -> int:
    """Return the most decisions that follow one another without any other box between."""
    asks = {n for n, node in enumerate(flow.nodes) if node.outline is Outline.DECISION}
    onward = {
        node: {link.target for link in flow.leaving(node) if link.target in asks} for node in asks
    }
    longest, paths = 0, [(node, frozenset({node})) for node in sorted(asks)]
    while paths and longest < len(asks):
        longest += 1
        # Only the last box and how many came before count, but a loop must not be run round twice.
        paths = list(
            {
                (after, seen | {after})
                for node, seen in paths
                for after in onward[node]
                if after is not None and after not in seen
            }
        )[:2000]
    return longest


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        if side.flow.links:
            yield Measure(in_a_row(side.flow), side.top)


RULE = Rule(
    id="FLO-11",
    title=N_("Decisions in a row"),
    limit=at_most(N_("decisions"), warning=3),
    source=N_("common practice, after Cowan 2001"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
    kinds=DRAWN,
)
