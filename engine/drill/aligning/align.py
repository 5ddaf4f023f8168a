"""A run laid against its pathway, and each departure named and placed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from chamberwise.engine.drill.aligning.alignment import Alignment, Kind, Move
from chamberwise.engine.drill.aligning.cheapest import Costs, NoEndError, cheapest
from chamberwise.engine.drill.aligning.pathway_net import Doing, PathwayNet, Spot
from chamberwise.engine.drill.aligning.within import Pairs, bound_pairs
from chamberwise.engine.drill.entries import Did, Ending, Looked
from chamberwise.engine.drill.run import Event, Run
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.words import ActId

DONE_BESIDES = 8
LOOKED_BESIDES = 3
CRITICAL = 4
ORDINARY = 2
LOOK = 1
ELSEWHERE = 1
"""What each kind of difference costs. Only ratios matter: something done besides costs more than

something left out, so that a run that leaves out much and goes on well is told as just that, and
what is done at another place of the run costs less than what it never does: two of a team who do
their parts the other way round have left nothing out. A look more than needed is a difference,
since looks tell where a run is, and no departure.
"""


class How(StrEnum):
    """In which way a run departs from its pathway."""

    LEFT_OUT = "left out"
    TOO_EARLY = "too early"
    TOO_LATE = "too late"
    BESIDES = "besides"
    AGAIN = "again"


@dataclass(frozen=True, slots=True)
class Departure:
    """One departure. `doing` is the pathway's, `event` the run's; a move out of order has both.

    Its place in the pathway is told by `after`, what the run did before it, and `then`, what it
    went on with; None at the beginning, at the end, and where the drill stopped before it.
    """

    how: How
    doing: Doing | None
    event: Event | None
    after: Event | None
    then: Event | None
    is_harmless: bool = False
    """Whether it is a matter of order alone that no rule forbids: such costs nothing."""
    matters: bool = False
    """Whether it is of a critical act, or of a grave rule or a hard order that was broken."""
    ahead: Doing | None = None
    """What the pathway has first, where the drill stopped before it came to what was early."""
    lacked: tuple[ActId, ...] = ()
    """What belongs before it by a hard order, and was not done."""
    broke: tuple[Rule, ...] = ()
    """The safety rules that it broke itself, the worst first."""
    elsewhere: Event | None = None
    """Where the run did at another place what was left out here."""


@dataclass(frozen=True, slots=True)
class Aligned:
    """An alignment with the events it is of."""

    events: tuple[Event, ...]
    alignment: Alignment[Spot, Doing]
    departures: tuple[Departure, ...]


def align(library: Library, run: Run) -> Aligned:
    """Lay a run against its pathway. The end is free unless an outcome was reached."""
    pathway = run.began.pathway
    pairs = bound_pairs(library, pathway) | _ordered(run)
    is_free = run.ended is None or run.ended.how is not Ending.OUTCOME
    critical = {each.act for each in run.critical}
    done = {each.entry.act for each in run.events if isinstance(each.entry, Did)}

    def besides(number: int) -> int:
        return DONE_BESIDES if isinstance(run.events[number].entry, Did) else LOOKED_BESIDES

    def left_out(doing: Doing) -> int:
        if doing.act is None:
            return LOOK
        if doing.act in done:
            return ELSEWHERE
        return CRITICAL if doing.act in critical else ORDINARY

    costs = Costs(besides, left_out)
    try:
        net = PathwayNet(library, pathway, run.events, pairs, is_free, run.first)
        found = cheapest(net, len(run.events), costs)
    except NoEndError:  # what was true at the end would have gone round for ever
        net = PathwayNet(library, pathway, run.events, pairs, True, run.first)
        found = cheapest(net, len(run.events), costs)
    to_come = tuple(net.still_to_come(found.end))
    return Aligned(run.events, found, departures(run.events, found.moves, to_come))


def _ordered(run: Run) -> Pairs:
    pairs = {(each.first, each.then) for each in run.orders}
    return frozenset(pairs | {(then, first) for first, then in pairs})


def departures(
    events: Sequence[Event], moves: Sequence[Move[Doing]], to_come: Sequence[Doing]
) -> tuple[Departure, ...]:
    """Name what an alignment's moves say, in the order of the run.

    A move of the run and one of the model for the same doing are one thing done out of order, also
    where the model's was still to come when the run stopped.
    """
    partner = _partners(events, moves)
    kept = [move.event for move in moves if move.kind is Kind.SYNCHRONOUS]
    done = {_name(events[event]) for event in kept if event is not None}
    later = {(doing.act, doing.looks_at): doing for doing in reversed(to_come)}
    found: list[Departure] = []
    for number, move in enumerate(moves):
        other = partner.get(number)
        if move.kind is Kind.SYNCHRONOUS or (other is not None and other < number):
            continue
        if move.event is None:
            late = None if other is None else events[moves[other].event or 0]
            how = How.LEFT_OUT if late is None else How.TOO_LATE
            departure = _departure(how, events, moves, number, move.doing, late)
            found.append(replace(departure, elsewhere=_elsewhere(events, departure)))
            continue
        event = events[move.event]
        if other is not None:
            doing = moves[other].doing
            found.append(_departure(How.TOO_EARLY, events, moves, other, doing, event))
        elif isinstance(event.entry, Did):
            name = _name(event)
            if name in later and name not in done:
                found.append(
                    Departure(
                        How.TOO_EARLY,
                        later[name],
                        event,
                        None,
                        None,
                        ahead=_ahead(to_come, events, event),
                    )
                )
            else:
                how = How.AGAIN if name in done else How.BESIDES
                found.append(_departure(how, events, moves, number, None, event))
    return tuple(found)


def _elsewhere(events: Sequence[Event], left: Departure) -> Event | None:
    """Return what else the run has of a doing that was left out: the next, else the last before."""
    if left.how is not How.LEFT_OUT or left.doing is None or left.doing.act is None:
        return None
    here = left.then.number if left.then else len(events)
    same = [each for each in events if _name(each) == (left.doing.act, None)]
    behind = [each for each in same if each.number >= here]
    return next(iter(behind or same[::-1]), None)


def _ahead(to_come: Sequence[Doing], events: Sequence[Event], event: Event) -> Doing | None:
    """Return what the pathway has before an event that came too early and nobody had done."""
    done = {_name(each) for each in events if each.number <= event.number}
    return next((each for each in to_come if (each.act, each.looks_at) not in done), None)


def _departure(
    how: How,
    events: Sequence[Event],
    moves: Sequence[Move[Doing]],
    place: int,
    doing: Doing | None,
    event: Event | None,
) -> Departure:
    """Return a departure with what stands about its place in the pathway."""
    before = [move.event for move in moves[:place] if move.event is not None]
    behind = [move.event for move in moves[place + 1 :] if move.event is not None]
    return Departure(
        how,
        doing,
        event,
        events[before[-1]] if before else None,
        events[behind[0]] if behind else None,
    )


def _partners(events: Sequence[Event], moves: Sequence[Move[Doing]]) -> dict[int, int]:
    """Pair each move of the model with the nearest move of the run of the same doing."""
    of_run = {
        number: _name(events[move.event])
        for number, move in enumerate(moves)
        if move.kind is Kind.LOG and move.event is not None
    }
    found: dict[int, int] = {}
    for number, move in enumerate(moves):
        if move.kind is not Kind.MODEL or move.doing is None:
            continue
        name = (move.doing.act, move.doing.looks_at)
        alike = [each for each, said in of_run.items() if said == name]
        if alike:
            nearest = min(alike, key=lambda each: (abs(each - number), each))
            found[number], found[nearest] = nearest, number
            del of_run[nearest]
    return found


def _name(event: Event) -> tuple[str | None, str | None]:
    entry = event.entry
    return (None, entry.finding) if isinstance(entry, Looked) else (entry.act, None)
