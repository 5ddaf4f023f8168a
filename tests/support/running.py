"""Runs of a drill by hand: what was done, in words, and what the team then knew.

    run = ran(library, "one", "2 hold, 5 look?, 9 cut by assistant", {"vitreous": "present"})

Each doing is an act, or a finding looked at with `?` (which shows what is true) or `=value`; before
it the second it was done at (else a second after the one before), after it who did it, how much
help there was (`nudged`, `menu`, `told`) and how sure somebody was (`guess`, `likely`, `sure`).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import UTC, datetime

from chamberwise.engine.drill.entries import (
    Began,
    Certainty,
    Cued,
    Did,
    Ended,
    Ending,
    Entry,
    Level,
    Looked,
    Mode,
    Recognised,
)
from chamberwise.engine.drill.run import Event, Run
from chamberwise.engine.meaning.advance import begin
from chamberwise.engine.meaning.effects import Knowledge, after_action
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.model.drill import CriticalAct, Order
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Line

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
LEVELS = {"nudged": Level.NUDGED, "menu": Level.MENU, "told": Level.TOLD}
CERTAINTIES = {"guess": Certainty.GUESS, "likely": Certainty.LIKELY, "sure": Certainty.SURE}


def ran(
    library: Library,
    pathway: str,
    script: str,
    truth: Mapping[str, str] | None = None,
    *,
    critical: tuple[CriticalAct, ...] = (),
    orders: str = "",
    ending: Ending = Ending.STOP_RULE,
    mode: Mode = Mode.RUN,
    recognised: int | None = None,
    lasts: int | None = None,
    on: datetime = NOW,
    seed: int = 1,
) -> Run:
    """Return a run by its script; `orders` are pairs as `first < then`, commas between."""
    now = dict(truth or {})
    events, entries = [], []
    knowledge: Knowledge = _at_first(library, pathway)
    for number, entry in enumerate(_entries(script, now), start=2):
        events.append(Event(entry, number, dict(now), *knowledge))
        entries.append(entry)
        knowledge = after(library, pathway, knowledge, entry)
    began = Began(on, "by-hand", seed, pathway, "0.1", "0" * 64, mode)
    said = None if recognised is None else Recognised(recognised * 1000, "it", "surgeon")
    last = lasts * 1000 if lasts is not None else entries[-1].at + 1000 if entries else 1000
    ended = Ended(last, ending)
    heard: tuple[Entry, ...] = () if said is None else (said,)
    whole = (began, Cued(0, "The chamber deepens.", is_first=True), *entries, *heard, ended)
    return Run(
        journal=whole,
        began=began,
        entries=whole,
        events=tuple(events),
        consequences=(),
        critical=critical,
        orders=tuple(_orders(orders)),
        first_cue=0,
        recognised=said,
        ended=ended,
    )


def _at_first(library: Library, pathway: str) -> Knowledge:
    state = begin(library, pathway).state
    return state.possible, state.last_seen


def after(library: Library, pathway: str, knowledge: Knowledge, entry: Did | Looked) -> Knowledge:
    """Return what is known once something is done or looked at."""
    layout = layout_of(library)
    if isinstance(entry, Did):
        line = Line(entry.who, "", act=entry.act)
        action = Action(id="by-hand", phase="only", lines=(line,), go_to="by-hand")
        return after_action(action, knowledge, library.words(pathway), layout, pathway)
    if entry.saw is None:
        return knowledge
    field = layout.field(pathway, entry.finding)
    possible, last_seen = knowledge
    return possible & ~field.every | field.bits[entry.saw], last_seen & ~field.every


def _entries(script: str, truth: dict[str, str]) -> Iterator[Did | Looked]:
    at = 0
    for doing in (each.split() for each in script.split(",") if each.strip()):
        at = int(doing.pop(0)) if doing[0].isdigit() else at + 1
        name, *said = doing
        who = said[said.index("by") + 1] if "by" in said else "surgeon"
        level = next((LEVELS[each] for each in said if each in LEVELS), Level.RECALLED)
        sure = next((CERTAINTIES[each] for each in said if each in CERTAINTIES), None)
        if name.endswith("?") or "=" in name:
            finding, _, value = name.rstrip("?").partition("=")
            if value:
                truth[finding] = value
            saw = truth.get(finding)
            yield Looked(at * 1000, finding, saw, who, level=level, certainty=sure)
        else:
            yield Did(at * 1000, name, who, level=level, certainty=sure)


def _orders(orders: str) -> Iterator[Order]:
    for pair in (each for each in orders.split(",") if each.strip()):
        first, _, then = pair.partition("<")
        yield Order(first.strip(), then.strip())
