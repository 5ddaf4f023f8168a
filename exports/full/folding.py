"""A phase as a little graph: what is a symbol, which arrows are drawn, which told as numbers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.content import FullPathway, Kind, Step

ALL_ALONE = 60
"""Up to so many steps each has a symbol of its own; of more, plain runs of actions share one."""


class Symbol(NamedTuple):
    """One or several steps that follow each other with no other way in or out."""

    steps: tuple[Step, ...]

    @property
    def name(self) -> str:
        """Its number or numbers."""
        first, last = self.steps[0].number, self.steps[-1].number
        return (
            str(first) if first == last else _("{first} to {last}").format(first=first, last=last)
        )


@dataclass(frozen=True, slots=True)
class Phase:
    """A phase or a stretch of one; links and numbers told beside, by the names of symbols."""

    title: str
    symbols: tuple[Symbol, ...]
    links: tuple[tuple[str, str], ...]
    told: tuple[tuple[str, tuple[int, ...]], ...]

    def parts(self, count: int) -> tuple[Phase, ...]:
        """Return the phase in so many stretches of even length, each named by its numbers."""
        if count < 2:
            return (self,)
        ends = [len(self.symbols) * each // count for each in range(count + 1)]
        stretches = [self.symbols[start:end] for start, end in pairwise(ends)]
        return tuple(phase_of(f"{self.title}: {_span(each)}", each) for each in stretches if each)

    def without(self, link: tuple[str, str]) -> Phase:
        """Return the phase with an arrow told as a number instead."""
        target = next(each for each in self.symbols if each.name == link[1])
        told = dict(self.told)
        told[link[0]] = tuple(sorted({*told.get(link[0], ()), target.steps[0].number}))
        links = tuple(each for each in self.links if each != link)
        return Phase(self.title, self.symbols, links, tuple(told.items()))


def _span(symbols: Sequence[Symbol]) -> str:
    """The numbers of a stretch."""
    return Symbol(tuple(step for symbol in symbols for step in symbol.steps)).name


def phases(content: FullPathway) -> tuple[Phase, ...]:
    """Return the phases in the order in which they begin."""
    symbols = _symbols(content)
    titles = dict.fromkeys(step.phase for step in content.steps)
    return tuple(
        phase_of(title, tuple(each for each in symbols if each.steps[0].phase == title))
        for title in titles
    )


def phase_of(title: str, symbols: Sequence[Symbol]) -> Phase:
    """Return symbols as a phase: arrows on within it are drawn, all others told as numbers."""
    names = {each.steps[0].number: each.name for each in symbols}
    links: dict[tuple[str, str], None] = {}
    told: dict[str, set[int]] = {}
    for symbol in symbols:
        last = symbol.steps[-1]
        for way in last.ways:
            if way.to in names and way.to > last.number:
                links[symbol.name, names[way.to]] = None
            else:
                told.setdefault(symbol.name, set()).add(way.to)
    numbers = tuple((name, tuple(sorted(each))) for name, each in told.items())
    return Phase(title, tuple(symbols), tuple(links), numbers)


def _symbols(content: FullPathway) -> list[Symbol]:
    """Join plain runs of actions, where there are too many steps for a symbol each."""
    ways_in = Counter(way.to for step in content.steps for way in step.ways)
    ways_in[content.start] += 1
    is_long = len(content.steps) > ALL_ALONE
    found: list[Symbol] = []
    for step in content.steps:
        before = found[-1].steps[-1] if found else None
        if before and is_long and ways_in[step.number] == 1 and _runs_into(before, step):
            found[-1] = Symbol((*found[-1].steps, step))
        else:
            found.append(Symbol((step,)))
    return found


def _runs_into(before: Step, step: Step) -> bool:
    is_plain = before.kind is step.kind is Kind.ACTION and before.phase == step.phase
    return is_plain and [way.to for way in before.ways] == [step.number]
