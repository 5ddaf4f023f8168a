"""One search by length for some rules, and what it says of each."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.monitors import Monitor, monitors
from chamberwise.engine.proof.rules import comes_back_by
from chamberwise.engine.proof.search import Search
from chamberwise.engine.proof.shots import Shots
from chamberwise.engine.proof.showing import scenes
from chamberwise.engine.proof.spoken_of import tracked_fields
from chamberwise.engine.proof.states import States
from chamberwise.engine.proof.watched import Watched


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
    states: States

    def machine(self, rule: int) -> int:
        """Return the number of a rule's machine."""
        return self.number_of[rule, False]

    def breaks(self, rule: int) -> bool:
        """Whether some walk was found that breaks a rule."""
        return self.machine(rule) in self.found.broken

    def holds(self, rule: int) -> bool:
        """Whether no walk breaks a rule."""
        return self.is_whole and not self.breaks(rule)

    def is_vacuous(self, rule: int) -> bool:
        """Whether no walk comes to what a rule is of."""
        trigger = self.number_of.get((rule, True))
        return self.is_whole and trigger is not None and trigger not in self.found.broken


def run(
    library: Library,
    pathway: PathwayId,
    rules: Sequence[Rule],
    most: int,
    *,
    stop_at_first: bool,
    reduced: bool,
) -> Run:
    """Search all walks of a pathway for those that break a rule, shorter ones first."""
    program = compiled(library, pathway, tracked_fields(library, pathway, rules))
    watching = monitors(rules)
    shots = Shots(watching, program, pathway)
    states = States(program, shots, shots.everywhere(scenes(program)), reduced=reduced)
    comes_back = comes_back_by(library, pathway)

    def is_end(place: Place) -> bool:
        return place.pathway != pathway or place.step not in comes_back

    search = Search(states, watching, most, is_end)
    found = search.by_length(stop_at_first=stop_at_first)
    is_whole = not (found.stopped or search.all_broken or (stop_at_first and search.has_broken))
    number_of = {(each.rule, each.is_trigger): number for number, each in enumerate(watching)}
    return Run(pathway, watching, found, is_whole, is_end, number_of, states)
