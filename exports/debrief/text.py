"""A debrief as plain text: what matters first, nothing wider than 78 columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import wrap

from chamberwise.exports.debrief.content import (
    FOLLOW,
    MARKED,
    PLACEHOLDER,
    STANDING,
    DebriefContent,
    FirstDeparture,
    LoopRow,
)

WIDTH = 78
TO_WRITE = "Owner: ____________  By: ____________"


def debrief_text(of: DebriefContent) -> str:
    """Return the debrief as text that ends in a line end."""
    lines = [*_front(of), *_middle(of), *_back(of), "", STANDING, FOLLOW, MARKED]
    return "\n".join([*lines, ""])


def _front(of: DebriefContent) -> Iterator[str]:
    yield from _wrapped(f"Debrief: {of.title}")
    for label, said in of.head:
        yield from _wrapped(said, f"{label + ':':<9}")
    yield from ("", f"RESULT: {of.result}")
    for gate in of.gates:
        yield from _wrapped(f"{gate.asks}: {gate.stands}", f"  {gate.letter}  ")
        for each in gate.because:
            yield from _wrapped(each, "     - ")
    yield f"  {PLACEHOLDER}"
    if of.sure_and_wrong:
        yield from ("", "SURE, AND NOT SO: talk about these first")
        yield from _listed(of.sure_and_wrong)
    if of.talking:
        yield from ("", "TO TALK ABOUT")
        for number, each in enumerate(of.talking, 1):
            yield from _wrapped(each, f"  {number}. ")


def _middle(of: DebriefContent) -> Iterator[str]:
    yield from _departures(of)
    if of.chain:
        yield from ("", "WHAT CAME OF IT")
        yield from _listed(of.chain)
    yield from ("", "TIMELINE, BY ROLE")
    for row in of.rows:
        yield from _wrapped("; ".join(row.said) or "nothing written down", f"  {row.role}: ")
    if of.silences:
        yield from _wrapped(", ".join(of.silences), "  Silent for over 8 s: ")
    if of.loops:
        yield from ("", "REQUESTS: asked, read back, reported done")
        for loop in of.loops:
            yield from _loop(loop)
    if of.figures:
        yield from ("", "FIGURES OF THIS ONE RUN")
        for figure in of.figures:
            yield from _wrapped(f"{figure.what}: {figure.told}", "  ")


def _departures(of: DebriefContent) -> Iterator[str]:
    if of.first_departure:
        yield from ("", of.first_title.upper())
        yield from _first(of.first_departure)
    if of.departures:
        yield from ("", "FURTHER DEPARTURES THAT MATTER")
        yield from _listed(of.departures)
    if of.lesser:
        yield from ("", "LESSER DEPARTURES")
        yield from _listed(of.lesser)


def _back(of: DebriefContent) -> Iterator[str]:
    yield from ("", "TWO OPEN QUESTIONS")
    for number, each in enumerate(of.questions, 1):
        yield from _wrapped(each, f"  {number}. ")
    yield from ("", "THE SYSTEM, NOT PEOPLE: kit, phone, chart")
    for each in of.system:
        yield from _wrapped(each, "  - ")
        yield f"    {TO_WRITE}"
    if not of.system:
        yield "  Nothing written down. Found: ____________________________________"
        yield f"    {TO_WRITE}"
    yield from ("", "ONE THING TO TAKE AWAY")
    yield from _wrapped(of.take_away, "  ")
    yield from ("", f"NEXT DUE: {of.next_due or 'see chamberwise progress'}")


def _first(of: FirstDeparture) -> Iterator[str]:
    if of.shown:
        yield from _wrapped(of.shown, "  Shown:   ")
    yield from _wrapped(of.done, "  Done:    ")
    yield from _wrapped(of.line, "  Pathway: ")
    if of.why:
        yield from _wrapped(of.why, "  Why:     ")
    for source in of.sources:
        yield from _wrapped(source, "  Source:  ")


def _loop(of: LoopRow) -> Iterator[str]:
    said = f"{of.request}, of {of.of}: asked {of.asked}, read back {of.read_back}, done {of.done}"
    yield from _wrapped(said, "  - ")


def _listed(said: Sequence[str]) -> Iterator[str]:
    for each in said:
        yield from _wrapped(each, "  - ")


def _wrapped(text: str, lead: str = "") -> list[str]:
    return wrap(
        lead + text,
        WIDTH,
        subsequent_indent=" " * min(len(lead), 11),
        break_long_words=False,
        break_on_hyphens=False,
    ) or [lead.rstrip()]
