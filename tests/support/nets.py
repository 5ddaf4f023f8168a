"""Small models written out arrow by arrow, to lay traces of letters against."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.drill.aligning.alignment import Alignment, Onward
from chamberwise.engine.drill.aligning.cheapest import Costs, cheapest

Arrows = Mapping[str, Sequence[tuple[str, str]]]
"""By node, each letter and the node it leads to; an empty letter is silent."""


@dataclass(frozen=True)
class LetterNet:
    """A model of letters, and a trace."""

    arrows: Arrows
    trace: str
    first: str
    last: str

    def onward(self, node: str, event: int) -> Iterator[Onward[str, str]]:
        letter = self.trace[event] if event < len(self.trace) else None
        for name, there in self.arrows.get(node, ()):
            if not name:
                yield Onward(there)
                continue
            if name == letter:
                yield Onward(there, taken=name)
            yield Onward(there, left_out=(name,))

    def may_end(self, node: str) -> bool:
        return node == self.last


UNIT: Costs[str] = Costs(lambda event: 1, lambda doing: 1)


def aligned(
    arrows: Arrows, trace: str, first: str = "first", last: str = "last"
) -> Alignment[str, str]:
    """Align a trace of letters with every departure costing one."""
    return cheapest(LetterNet(arrows, trace, first, last), len(trace), UNIT)


def fitness(arrows: Arrows, trace: str) -> float:
    """Return 1 less the cost over that of leaving out everything and doing everything besides."""
    worst = len(trace) + aligned(arrows, "").cost
    return 1 - aligned(arrows, trace).cost / worst


def runs(arrows: Arrows, most: int) -> Iterator[str]:
    """Yield every run of the model of up to so many letters."""
    waiting = [("first", "")]
    while waiting:
        node, said = waiting.pop()
        if node == "last":
            yield said
        if len(said) < most:
            waiting += [(there, said + name) for name, there in arrows.get(node, ())]
