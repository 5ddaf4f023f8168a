"""One search for some rules, and what it says of each."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum, auto

from chamberwise.engine.exploration.liveness import mark_live
from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.monitors import Monitor, monitors
from chamberwise.engine.proof.pruning import prune
from chamberwise.engine.proof.rules import comes_back_by
from chamberwise.engine.proof.search import Search
from chamberwise.engine.proof.shots import NO_SHOT, Shots
from chamberwise.engine.proof.spots import spots_of
from chamberwise.engine.proof.states import States
from chamberwise.engine.proof.sweep import Sweep
from chamberwise.engine.proof.watched import Watched


class Order(Enum):
    """How to go through the states: each about once, shorter walks first, or so up to a break."""

    BY_RANK = auto()
    BY_LENGTH = auto()
    FIRST_BREAK = auto()


@dataclass(frozen=True, slots=True)
class Run:
    """What a search found, with the rules by their numbers."""

    pathway: PathwayId
    watching: tuple[Monitor, ...]
    found: Watched
    is_whole: bool
    """Whether it came to its end, so that what did not break holds."""
    is_end: Callable[[Place], bool]
    """Whether the operation ends at an outcome, instead of going on elsewhere."""
    number_of: Mapping[tuple[int, bool], int]
    """The machines by their rule and by whether they are its trigger."""
    states: States | None = None
    """The states and the moves between them, of a search by length."""

    @property
    def stopped(self) -> bool:
        """Whether there were more states than it may look at."""
        return self.found.stopped

    def machine(self, rule: int, *, trigger: bool = False) -> int | None:
        """Return the number of a rule's machine, or of its trigger's, which it may lack."""
        return self.number_of.get((rule, trigger))

    def breaks(self, rule: int) -> bool:
        """Whether some walk was found that breaks a rule."""
        machine = self.machine(rule)
        return machine in self.found.lost or machine in self.found.unkept

    def broken_in(self, rule: int) -> PathwayId | None:
        """Return the pathway in which a rule was first found to break, if it was."""
        machine = self.machine(rule)
        for found in (self.found.lost, self.found.unkept):
            if machine in found:
                return found[machine].pathway
        return None

    def holds(self, rule: int) -> bool:
        """Whether no walk breaks a rule."""
        return self.is_whole and not self.breaks(rule)

    def is_vacuous(self, rule: int) -> bool:
        """Whether no walk comes to what a rule is of."""
        trigger = self.machine(rule, trigger=True)
        return self.is_whole and trigger is not None and trigger not in self.found.lost


def run(
    program: Program,
    pathway: PathwayId,
    rules: Sequence[Rule],
    order: Order,
    most: int,
    *,
    reduced: bool,
) -> Run:
    """Search all walks of a program for those that break a rule."""
    watching = monitors(rules)
    shots = Shots(watching, program, pathway)
    shot_at = shots.everywhere()
    spots = spots_of(program)
    if reduced and all(monitor.only_forbids for monitor in watching):
        speaking = (number for number, shot in enumerate(shot_at) if shot != NO_SHOT)
        prune(program, spots, frozenset(speaking))
    comes_back = comes_back_by(program.library, pathway)

    def is_end(place: Place) -> bool:
        return place.pathway != pathway or place.step not in comes_back

    number_of = {(each.rule, each.is_trigger): number for number, each in enumerate(watching)}
    if order is Order.BY_RANK:
        if reduced:
            mark_live(program)
        found = Sweep(program, spots, shots, shot_at, most, is_end).run()
        return Run(pathway, watching, found, not found.stopped, is_end, number_of)
    states = States(program, shots, shot_at, reduced=reduced)
    search = Search(states, watching, most, is_end)
    briefly = order is Order.FIRST_BREAK
    found = search.by_length(stop_at_first=briefly)
    is_whole = not found.stopped and not (briefly and search.has_broken)
    return Run(pathway, watching, found, is_whole, is_end, number_of, states)
