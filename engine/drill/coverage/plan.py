"""The smallest set of drills found in which every answer is given and every rule arises.

Greedy on walks that can happen; how few there could be at best is told beside it, from a flow over
the map of arrows. Between the two nothing is claimed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from chamberwise.engine.drill.coverage.fewest import fewest_walks
from chamberwise.engine.drill.coverage.guide import Answer, Guide, guide
from chamberwise.engine.drill.coverage.states import StateGraph
from chamberwise.engine.drill.coverage.walking import Walk, Walker
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import RuleId
from chamberwise.engine.model.step import PathwayId


@dataclass(frozen=True, slots=True)
class Planned:
    """One drill of a plan: its answers in order, what it is first to show, and where it ends."""

    answers: tuple[Answer, ...]
    first_answers: tuple[Answer, ...]
    first_rules: tuple[RuleId, ...]
    ends_at: Place


@dataclass(frozen=True, slots=True)
class Plan:
    """A plan. `at_least` is how few drills there could be at best; `never` was found on no walk."""

    pathway: PathwayId
    drills: tuple[Planned, ...]
    at_least: int
    answers: int
    rules: int
    never: tuple[Answer, ...]
    never_arise: tuple[RuleId, ...]


def plan(library: Library, pathway: PathwayId) -> Plan:
    """Return a plan for a pathway and all it hands over to."""
    found = guide(library, pathway)
    graph = StateGraph(library, pathway, found)
    walker = Walker(found, graph)
    kept = _needed(_walks(walker, library.words(pathway).rules), graph)
    missed = (1 << len(found.answers)) - 1 & ~walker.shown
    names = {bit: answer for answer, bit in found.answers.items()}
    every = dict.fromkeys(library.words(pathway).rules)
    drills, seen = _told(kept, graph, names, every)
    return Plan(
        pathway,
        drills,
        _at_least(found, missed),
        len(names),
        len(every),
        tuple(names[bit] for bit in _bits(missed)),
        tuple(rule for rule in every if rule not in seen),
    )


def _walks(walker: Walker, rules: Iterable[RuleId]) -> list[Walk]:
    """Return walks that give every answer, and set off every rule, that any was found to.

    Those first after which most may still come, those that end a walk last.
    """
    left = walker.shown
    walks: list[Walk] = []
    while left:
        first = walker.guide.leads_on(left) or left
        walk = walker.walk_to(first & -first, left)
        walks.append(walk)
        left &= ~walk.given
    arisen = {rule for walk in walks for rule in walker.graph.set_off(walk.shots)}
    for rule in (each for each in rules if each not in arisen):
        found = walker.walk_setting_off(rule)
        walks += [found] if found else []
    return walks


def _needed(walks: Sequence[Walk], graph: StateGraph) -> list[Walk]:
    """Return the walks without those that the others make needless, the poorest tried first."""
    shows = [({*walk.answers}, graph.set_off(walk.shots)) for walk in walks]
    times: Counter[int | str] = Counter(each for both in shows for of in both for each in of)
    kept = set(range(len(walks)))
    for number in sorted(kept, key=lambda each: len(shows[each][0])):
        own = [each for of in shows[number] for each in of]
        if all(times[each] > 1 for each in own):
            times.subtract(own)
            kept.discard(number)
    return [walks[number] for number in sorted(kept)]


def _told(
    walks: Iterable[Walk],
    graph: StateGraph,
    names: dict[int, Answer],
    every: dict[RuleId, None],
) -> tuple[tuple[Planned, ...], set[RuleId]]:
    given: set[int] = set()
    seen: set[RuleId] = set()
    drills: list[Planned] = []
    for walk in walks:
        rules = graph.set_off(walk.shots)
        new = [bit for bit in dict.fromkeys(walk.answers) if bit not in given]
        drills.append(
            Planned(
                tuple(names[bit] for bit in walk.answers),
                tuple(names[bit] for bit in new),
                tuple(rule for rule in every if rule in rules and rule not in seen),
                graph.place(walk.at),
            )
        )
        given |= set(new)
        seen |= rules
    return tuple(drills), seen


def _at_least(of: Guide, missed: int) -> int:
    """Return how many walks at least give all that can be given.

    Only answers that stand at one spot of the map are asked of it: of the others it is enough to
    be given at one of several.
    """
    times = Counter(arrow.answer for arrow in of.arrows if arrow.answer)
    needed = [
        number
        for number, arrow in enumerate(of.arrows)
        if arrow.answer and times[arrow.answer] == 1 and not arrow.answer & missed
    ]
    goes_on = {arrow.start for arrow in of.arrows}
    end = len(of.asks)
    ends = [(spot, end) for spot in range(end) if spot not in goes_on]
    arrows = [(arrow.start, arrow.to) for arrow in of.arrows] + ends
    return fewest_walks(arrows, needed, 0, end).walks


def _bits(of: int) -> Iterable[int]:
    while of:
        yield of & -of
        of &= of - 1
