"""What a line typed, a key or the clock adds to a drill's journal, and what is said of it.

Nothing here reads a clock: `at` is passed in, in milliseconds since the drill began.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace

from chamberwise.engine.drill.around import said_around
from chamberwise.engine.drill.doing import due_injects, sign_of, what_is_seen
from chamberwise.engine.drill.entries import (
    Certainty,
    Cued,
    Did,
    Ended,
    Ending,
    Entry,
    Helped,
    Injected,
    Level,
    Looked,
    Milliseconds,
    NotUnderstood,
    Recognised,
    Wondered,
)
from chamberwise.engine.drill.fold import Drill, add
from chamberwise.engine.drill.following import can_be_done, is_at_the_end
from chamberwise.engine.drill.ladder import is_recognised, level_now, level_of, title_of
from chamberwise.engine.drill.playing import who_does
from chamberwise.engine.drill.standing import has_been, was_done
from chamberwise.engine.drill.wording.matching import understand
from chamberwise.engine.drill.wording.phrasebook import Target, phrasebook_of
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

SECOND: Milliseconds = 1000
NOT_DONE = N_("Heard what is not done. Say what you do.")
NOTHING_YET = N_("Heard. Say what you do, what you look at, or what you say aloud.")
NOT_FOUND = N_("Not understood; it is kept for whoever looks after the words. Say it another way.")
NOTHING_SEEN = N_("Nothing of it can be told from here.")
ASKED = N_("Asked, not said: the team waits for an answer. Once you know, say what it is.")
MARKED = {
    Certainty.SURE: N_("Marked: sure."),
    Certainty.LIKELY: N_("Marked: likely."),
    Certainty.GUESS: N_("Marked: guess."),
}
LEFT_OPEN = N_("Not understood of it: “{typed}”. Say that another way.")
TOO_EARLY = N_("Nothing shows that yet. It is written down.")


@dataclass(frozen=True, slots=True)
class Typed:
    """Words typed, when, by whom, when the first key was pressed, and how sure somebody was."""

    text: str
    at: Milliseconds
    first_key: Milliseconds | None = None
    who: str | None = None
    certainty: Certainty | None = None
    level: Level | None = None
    """Set where it was picked from a menu."""


@dataclass(frozen=True, slots=True)
class Taken:
    """The drill after something was taken: what is said of it, and what is to be chosen from."""

    drill: Drill
    said: tuple[str, ...] = ()
    seen: tuple[str, ...] = ()
    """What could be perceived: cues."""
    asked: tuple[Target, ...] = field(default=())
    asked_about: str = ""
    """The words that are asked about, where they are not all that was typed."""


def take(drill: Drill, typed: Typed) -> Taken:
    """Return the drill after a line typed."""
    book = phrasebook_of(drill.scenario)
    meant = understand(book, typed.text, said_around(drill.scenario, drill.standing))
    typed = replace(typed, certainty=typed.certainty or meant.certainty)
    taken = Taken(drill)
    if meant.says_trigger and not is_recognised(drill):
        taken = _recognised(taken, typed)
    wonders = meant.asks_trigger and not is_recognised(drill)
    if wonders:
        entry = Wondered(typed.at, typed.text, typed.who or "surgeon")
        taken = replace(taken, drill=add(taken.drill, entry), said=(*taken.said, _(ASKED)))
    before = [each for each in meant.first if not _was_done(taken.drill, each)]
    for target in (*before, *meant.taken):
        taken = _one(taken, target, typed)
    if meant.asked:
        return replace(taken, asked=meant.asked, asked_about=meant.left_open)
    if meant.left_open:
        said = _(LEFT_OPEN).format(typed=meant.left_open)
        return _not_understood(taken, replace(typed, text=meant.left_open), said)
    if meant.taken or meant.says_trigger or wonders:
        return taken
    if meant.only_exclaims:
        return replace(taken, said=(*taken.said, _(NOTHING_YET)))
    if meant.only_not_done:
        return _not_understood(taken, typed, _(NOT_DONE))
    return _not_understood(taken, typed, _(NOT_FOUND))


def choose(drill: Drill, targets: Iterable[Target], typed: Typed) -> Taken:
    """Return the drill after targets were picked, in their order."""
    taken = Taken(drill)
    for target in targets:
        taken = _one(taken, target, typed)
    return taken


def happened(drill: Drill, entries: Iterable[Entry], at: Milliseconds) -> Taken:
    """Return the drill after some entries that need no words, and what they set off."""
    taken = Taken(drill)
    for entry in entries:
        after = add(taken.drill, entry)
        shown = after.standing.cues if isinstance(entry, Did) else ()
        taken = _cued(taken, after, shown, at)
    return _settled(taken, at)


def not_meant(drill: Drill, typed: Typed) -> Taken:
    """Return the drill after none of what was offered was meant."""
    return _not_understood(Taken(drill), typed, _(NOT_FOUND))


def say_it(drill: Drill, typed: Typed) -> Taken:
    """Return the drill after somebody picked, or was told, what this is."""
    return _recognised(Taken(drill), typed)


def helped(drill: Drill, at: Milliseconds) -> Drill:
    """Return the drill after help was asked for: one step up the ladder."""
    return add(drill, Helped(at, Level(min(Level.TOLD, level_now(drill) + 1))))


def give_up(drill: Drill, at: Milliseconds) -> Drill:
    """Return the drill after somebody left it."""
    return drill if is_over(drill) else add(drill, Ended(at, Ending.GIVEN_UP))


def is_over(drill: Drill) -> bool:
    """Whether the drill has ended."""
    return any(isinstance(entry, Ended) for _at, entry in drill.stands)


def first_cue_at(drill: Drill) -> Milliseconds | None:
    """Return when the first cue was shown, if it was."""
    cues = (entry for _at, entry in drill.stands if isinstance(entry, Cued) and entry.is_first)
    return next((entry.at for entry in cues), None)


def tick(drill: Drill, at: Milliseconds) -> Taken:
    """Return the drill with everything that the clock has brought until now, each at its time."""
    seen: list[str] = []
    while not is_over(drill):
        due = min(_by_clock(drill), key=lambda each: each.at, default=None)
        if due is None or due.at > at:
            break
        drill = add(drill, due)
        if isinstance(due, Injected):
            seen += drill.standing.cues
        elif isinstance(due, Cued):
            seen.append(due.text)
    return Taken(drill, seen=tuple(seen))


def next_due(drill: Drill) -> Milliseconds | None:
    """Return when the clock brings something next."""
    return min((each.at for each in _by_clock(drill)), default=None)


def ends_at(drill: Drill) -> Milliseconds:
    """Return when time is out."""
    first = first_cue_at(drill)
    began = drill.scenario.first_cue * SECOND if first is None else first
    return began + drill.scenario.lasts * SECOND


def _by_clock(drill: Drill) -> Iterator[Cued | Injected | Ended]:
    if is_over(drill):
        return
    scenario, shown, last = drill.scenario, _shown(drill), drill.stands[-1][1].at
    first = first_cue_at(drill)
    for seconds, text in scenario.decoys:
        if first is None and text not in shown:
            yield Cued(seconds * SECOND, text)
    if first is None:
        yield Cued(scenario.first_cue * SECOND, scenario.cue, is_first=True)
        return
    for inject in scenario.injects:
        if inject.at is None or inject.id in drill.standing.injected:
            continue
        if inject in due_injects(scenario, drill.standing, inject.at):
            yield Injected(max(last, first + inject.at * SECOND), inject.id)
    yield Ended(ends_at(drill), Ending.TIME_OUT)


def _shown(drill: Drill) -> set[str]:
    return {entry.text for _at, entry in drill.stands if isinstance(entry, Cued)}


def _recognised(taken: Taken, typed: Typed) -> Taken:
    drill = taken.drill
    level = level_now(drill) if typed.level is None else typed.level
    who = typed.who or "surgeon"
    entry = Recognised(typed.at, typed.text, who, level, typed.certainty, typed.first_key)
    early = first_cue_at(drill) is None
    recognised = _("Recognised.")
    said = _(TOO_EARLY) if early else f"{recognised}{_marked(typed)}"
    return replace(taken, drill=add(drill, entry), said=(*taken.said, said))


def _one(taken: Taken, target: Target, typed: Typed) -> Taken:
    if is_over(taken.drill):
        return taken
    return _look(taken, target, typed) if target.finding else _act(taken, target, typed)


def _act(taken: Taken, target: Target, typed: Typed) -> Taken:
    drill, scenario, act = taken.drill, taken.drill.scenario, target.act
    if not can_be_done(scenario, drill.standing, act):
        said = _("{act}: not now. {otherwise}").format(
            act=scenario.title_of(act), otherwise=scenario.turns_of(act).otherwise
        )
        return replace(taken, said=(*taken.said, said))
    entry = Did(
        typed.at,
        act,
        typed.who or who_does(scenario, act),
        typed.text,
        level_of(drill, target) if typed.level is None else typed.level,
        typed.certainty,
        typed.first_key,
    )
    drill = add(drill, entry)
    done = _("Done: {act}.").format(act=scenario.title_of(act))
    taken = replace(taken, said=(*taken.said, f"{done}{_marked(typed)}"))
    return _settled(_cued(taken, drill, drill.standing.cues, typed.at), typed.at)


def _look(taken: Taken, target: Target, typed: Typed) -> Taken:
    drill, scenario, finding = taken.drill, taken.drill.scenario, target.finding
    saw = what_is_seen(scenario, drill.standing, finding)
    entry = Looked(
        typed.at,
        finding,
        saw,
        typed.who or "surgeon",
        typed.text,
        level_of(drill, target) if typed.level is None else typed.level,
        typed.certainty,
        typed.first_key,
    )
    title = title_of(drill, target)
    sign = sign_of(scenario, drill.standing, finding, saw) if saw else _(NOTHING_SEEN)
    taken = replace(
        taken, said=(*taken.said, f"{title}.{_marked(typed)}"), seen=(*taken.seen, sign)
    )
    return _settled(replace(taken, drill=add(drill, entry)), typed.at)


def _settled(taken: Taken, at: Milliseconds) -> Taken:
    """Return what was taken with what an act sets off, and the end if this was it."""
    drill, scenario = taken.drill, taken.drill.scenario
    for inject in due_injects(scenario, drill.standing, -1):
        drill = add(drill, Injected(at, inject.id))
        taken = replace(taken, drill=drill, seen=(*taken.seen, *drill.standing.cues))
    if has_been(scenario, drill.standing, scenario.ends_at):
        return replace(taken, drill=add(drill, Ended(at, Ending.STOP_RULE)))
    if is_at_the_end(scenario, drill.standing):
        return replace(taken, drill=add(drill, Ended(at, Ending.OUTCOME)))
    return taken


def _cued(taken: Taken, drill: Drill, cues: Iterable[str], at: Milliseconds) -> Taken:
    shown = tuple(cues)
    for text in shown:
        drill = add(drill, Cued(at, text))
    return replace(taken, drill=drill, seen=(*taken.seen, *shown))


def _marked(typed: Typed) -> str:
    """Return how sure somebody said to be, so that no mark goes unseen."""
    return f" {_(MARKED[typed.certainty])}" if typed.certainty else ""


def _was_done(drill: Drill, target: Target) -> bool:
    since = drill.scenario.renewed_by.get(target.act, frozenset())
    return bool(target.finding) or was_done(drill.standing, (target.act,), since)


def _not_understood(taken: Taken, typed: Typed, said: str) -> Taken:
    entry: Entry = NotUnderstood(typed.at, typed.text)
    return replace(taken, drill=add(taken.drill, entry), said=(*taken.said, said))
