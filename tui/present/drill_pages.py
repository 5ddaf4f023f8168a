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
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.present.parts import GAP, Part, Tone

WHAT_FOR = N_(
    "Rehearses recall, sequence, the timing of decisions and team roles; never operative skill."
)
FOLLOW = N_("Never live care. Follow local protocol.")
HOW_TO = N_("Say what you do in your own words. ? helps, ?? lists what else may be typed.")
MODES = {
    Mode.REHEARSE: N_("Rehearsal: you may go back, and nothing counts."),
    Mode.RUN: N_("Run: there is no way back, and it counts."),
}
GONE_ON_WITH = N_("Run gone on with: there is no way back, and it no longer counts.")


def opening(drill: Drill, mode: Mode) -> list[Part]:
    """Return the brief: what the team knows before anything happens."""
    scenario = drill.scenario
    title = _("Drill. Seed {seed}.")
    if scenario.title:
        title = _("Drill: {title}. Seed {seed}.")
    return [
        Part(
            title.format(title=scenario.title, seed=scenario.seed),
            tone=Tone.HEADING,
        ),
        Part(" ".join([_(WHAT_FOR), _(_counts(drill, mode)), _(FOLLOW)]), tone=Tone.CALM),
        GAP,
        Part(_("Brief"), tone=Tone.HEADING),
        *(Part(text, "  ") for text in scenario.brief),
        Part(scenario.so_far, "  "),
        GAP,
        Part(_(HOW_TO), tone=Tone.CALM),
        *_done_so_far(drill),
    ]


def _counts(drill: Drill, mode: Mode) -> str:
    """Return what goes back and counts; an interrupted run counts no longer."""
    return GONE_ON_WITH if mode is Mode.RUN and _is_resumed(drill) else MODES[mode]


def _is_resumed(drill: Drill) -> bool:
    return any(isinstance(entry, Resumed) for _number, entry in drill.stands)


def _done_so_far(drill: Drill) -> Iterator[Part]:
    """Yield what stands of a drill that is gone on with, for whoever comes back to it."""
    if not _is_resumed(drill):
        return
    entries = [entry for _number, entry in drill.stands]
    yield GAP
    yield Part(_("So far"), tone=Tone.HEADING)
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
