"""A run of the main pathway with much to talk about, for debriefs."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from chamberwise.engine.drill.debriefing.debrief import debrief
from chamberwise.engine.drill.entries import Asked, Injected, NotUnderstood, ReadBack
from chamberwise.engine.drill.run import Consequence, Run
from chamberwise.exports.debrief.content import DebriefContent
from chamberwise.exports.debrief.extract import debrief_content

from tests.conformance.driver import library
from tests.support.by_the_book import doings, drilled, moved, without

NEXT = date(2026, 11, 26)


def eventful() -> Run:
    """Return a run in which the tip left early, the box was forgotten, and a pack was missing."""
    script = list(doings()[:20])
    script = moved(script, "withdraw-tip", "fill-with-dispersive-viscoelastic")
    script = without(script, "fetch-box")
    timed = [f"{place * 3} {doing}" for place, doing in enumerate(script)]
    timed = [f"{each} sure" if "withdraw-tip" in each else each for each in timed]
    timed[-1] = timed[-1].replace(timed[-1].split()[0], "75", 1)
    run = drilled(timed, recognised=4)
    more = (
        Asked(5000, "the rupture box", "surgeon", "circulating-practitioner"),
        ReadBack(7000, "the rupture box", "circulating-practitioner"),
        Injected(30000, "The vitrector pack is missing."),
        NotUnderstood(33000, "put the thing in"),
    )
    entries = tuple(sorted((*run.entries, *more), key=lambda entry: entry.at))
    numbers = {id(entry): number for number, entry in enumerate(entries)}
    events = tuple(replace(each, number=numbers[id(each.entry)]) for each in run.events)
    flat = Consequence(
        8,
        "withdraw-tip",
        "The chamber goes flat and vitreous comes to the wound.",
        (("vitreous", "in-wound"),),
        "The tip was the plug.",
    )
    return replace(run, journal=entries, entries=entries, events=events, consequences=(flat,))


def by_the_book() -> Run:
    """Return a first minute without a fault."""
    return drilled([f"{place * 2} {doing}" for place, doing in enumerate(doings()[:16])])


def content(run: Run) -> DebriefContent:
    """Return what the debrief of a run says."""
    return debrief_content(library(), debrief(library(), run, NEXT))
