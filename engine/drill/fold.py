"""From a scenario and a journal to the drill as it stands. The same two give the same run."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from chamberwise.engine.drill.doing import did, injected, looked
from chamberwise.engine.drill.entries import (
    Began,
    Cued,
    Did,
    Ended,
    Entry,
    Injected,
    Looked,
    Recognised,
    Rewound,
)
from chamberwise.engine.drill.following import acts_of, can_be_reused
from chamberwise.engine.drill.never_right import never_right
from chamberwise.engine.drill.playing import asked_for, begun
from chamberwise.engine.drill.reaching import came_to
from chamberwise.engine.drill.run import Run
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.drill.standing import Standing
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Action
from chamberwise.engine.model.words import ActId

Numbered = tuple[tuple[int, Entry], ...]


class DrillJournalError(ValueError):
    """The journal does not fold over this scenario; `args[0]` says what does not fit."""


@dataclass(frozen=True, slots=True)
class Drill:
    """A drill as it stands: its journal, what stands of it, and where it stands."""

    scenario: Scenario
    journal: tuple[Entry, ...]
    stands: Numbered
    """The entries not rewound, each with its number in the journal."""
    standing: Standing


def begin_drill(scenario: Scenario, began: Began) -> Drill:
    """Return a drill in which nothing was done yet."""
    return Drill(scenario, (began,), ((0, began),), begun(scenario))


def add(drill: Drill, entry: Entry) -> Drill:
    """Return the drill after one more entry."""
    number = len(drill.journal)
    journal = (*drill.journal, entry)
    if isinstance(entry, Rewound):
        stands = (*(each for each in drill.stands if each[0] < entry.to), (number, entry))
        return Drill(drill.scenario, journal, stands, _standing(drill.scenario, stands))
    standing = _after(drill.scenario, drill.standing, entry, number)
    return Drill(drill.scenario, journal, (*drill.stands, (number, entry)), standing)


def unfold(scenario: Scenario, journal: Iterable[Entry]) -> Drill:
    """Return the drill that a journal describes. Raises `DrillJournalError`."""
    entries = iter(journal)
    first = next(entries, None)
    if not isinstance(first, Began):
        raise DrillJournalError(_("the journal does not say which drill was begun"))
    drill = begin_drill(scenario, first)
    for entry in entries:
        if isinstance(entry, Began):
            raise DrillJournalError(_("the journal begins twice"))
        drill = add(drill, entry)
    return drill


def fold(scenario: Scenario, journal: Iterable[Entry]) -> Run:
    """Return the run that a journal describes. Raises `DrillJournalError`."""
    return as_run(unfold(scenario, journal))


def as_run(drill: Drill) -> Run:
    """Return what was done in a drill, in order, and what was true each time."""
    book, began, wanted = drill.scenario.book, drill.journal[0], _wanted(drill)
    assert isinstance(began, Began)
    before, harms = begun(drill.scenario), drill.scenario.harms
    entries = tuple(entry for _at, entry in drill.stands)
    ended = next((each for each in entries if isinstance(each, Ended)), None)
    first_cue = next(
        (each.at for each in entries if isinstance(each, Cued) and each.is_first), None
    )
    return Run(
        drill.journal,
        began,
        entries,
        drill.standing.events,
        drill.standing.consequences,
        tuple(each for each in book.critical if each.act in wanted),
        book.orders,
        first_cue,
        _recognised(entries, first_cue),
        ended,
        first=before.state,
        so_far=before.moments,
        at_a_glance=book.at_a_glance,
        came_to=came_to(drill.scenario, drill.standing, ended),
        rules=never_right(drill.scenario),
        counts_as={act: harm.counts_as for act, harm in harms.items() if harm.counts_as},
        injects={each.id: each.title for each in book.injects},
    )


def _wanted(drill: Drill) -> frozenset[ActId]:
    """Return the acts that were called for: by the scenario, and by where the pathway came to.

    What was done before the drill began, and is good once done, is called for by neither.
    """
    library, visited = drill.scenario.library, drill.standing.visited
    steps = [library.step(place) for place in visited]
    of_steps = [act for step in steps if isinstance(step, Action) for act in acts_of(step)]
    before = begun(drill.scenario).done
    settled = {act for act in before if can_be_reused(drill.scenario, act)}
    asked = asked_for(drill.scenario) - settled
    return asked | {act for act in of_steps if act not in before}


def _recognised(entries: Sequence[Entry], first_cue: int | None) -> Recognised | None:
    """Return when it was first said; what is said before there is anything to see is a guess."""
    return next(
        (
            each
            for each in entries
            if isinstance(each, Recognised) and first_cue is not None and each.at >= first_cue
        ),
        None,
    )


def _standing(scenario: Scenario, stands: Numbered) -> Standing:
    standing = begun(scenario)
    for number, entry in stands:
        standing = _after(scenario, standing, entry, number)
    return standing


def _after(scenario: Scenario, standing: Standing, entry: Entry, number: int) -> Standing:
    match entry:
        case Did():
            return did(scenario, standing, entry, number)
        case Looked():
            return looked(scenario, standing, entry, number)
        case Injected():
            return injected(scenario, standing, entry)
    return standing
