"""What a drill shows before it begins, in line mode and on the screen."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.drill.entries import (
    Cued,
    Did,
    Entry,
    Injected,
    Looked,
    Milliseconds,
    Mode,
    Recognised,
    Resumed,
    Wondered,
)
from chamberwise.engine.drill.fold import Drill
from chamberwise.engine.drill.ladder import title_of
from chamberwise.engine.drill.wording.phrasebook import Target
from chamberwise.tui.present.parts import GAP, Part, Tone

WHAT_FOR = (
    "Rehearses recall, sequence, the timing of decisions and team roles; never operative skill."
)
FOLLOW = "Never live care. Follow local protocol."
HOW_TO = "Say what you do in your own words. ? helps, ?? lists what else may be typed."
MODES = {
    Mode.REHEARSE: "Rehearsal: you may go back, and nothing counts.",
    Mode.RUN: "Run: there is no way back, and it counts.",
}


def opening(drill: Drill, mode: Mode) -> list[Part]:
    """Return the brief: what the team knows before anything happens."""
    scenario = drill.scenario
    title = f": {scenario.title}" if scenario.title else ""
    return [
        Part(f"Drill{title}. Seed {scenario.seed}.", tone=Tone.HEADING),
        Part(f"{WHAT_FOR} {MODES[mode]} {FOLLOW}", tone=Tone.CALM),
        GAP,
        Part("Brief", tone=Tone.HEADING),
        *(Part(text, "  ") for text in scenario.brief),
        Part(scenario.so_far, "  "),
        GAP,
        Part(HOW_TO, tone=Tone.CALM),
        *_done_so_far(drill),
    ]


def _done_so_far(drill: Drill) -> Iterator[Part]:
    """Yield what stands of a drill that is gone on with, for whoever comes back to it."""
    entries = [entry for _, entry in drill.stands]
    if not any(isinstance(entry, Resumed) for entry in entries):
        return
    yield GAP
    yield Part("So far", tone=Tone.HEADING)
    for entry in entries:
        told = _told(drill, entry)
        if told:
            yield Part(told, f"  {clock_text(entry.at)} ")


def _told(drill: Drill, entry: Entry) -> str:
    match entry:
        case Did():
            return title_of(drill, Target(act=entry.act))
        case Looked():
            return title_of(drill, Target(finding=entry.finding))
        case Cued():
            return entry.text
        case Injected():
            inject = drill.scenario.inject(entry.inject)
            return inject.shows if inject else ""
        case Recognised() | Wondered():
            return f"“{entry.typed}”" if entry.typed else ""
    return ""


def clock_text(at: Milliseconds) -> str:
    """Return a time as minutes and seconds.

    >>> clock_text(75_400)
    '1:15'
    """
    minutes, seconds = divmod(at // 1000, 60)
    return f"{minutes}:{seconds:02}"
