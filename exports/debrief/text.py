"""A debrief as plain text: what matters first, nothing wider than 75 columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import wrap

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.debrief.content import (
    FOLLOW,
    MARKED,
    PLACEHOLDER,
    STANDING,
    DebriefContent,
    FirstDeparture,
    LoopRow,
)
from chamberwise.exports.language.unreviewed import unreviewed_notice

WIDTH = 75
"""So that it also stands beside the bar of a screen of 80 columns."""
TO_WRITE = N_("Owner: ____________  By: ____________")


def debrief_text(of: DebriefContent) -> str:
    """Return the debrief as text that ends in a line end."""
    lines = [
        *_front(of),
        *_middle(of),
        *_back(of),
        "",
        *(
            line
            for said in (_(STANDING), _(FOLLOW), _(MARKED), *_foreign())
            for line in _wrapped(said)
        ),
    ]
    return "\n".join([*lines, ""])


def _foreign() -> tuple[str, ...]:
    notice = unreviewed_notice()
    return (notice,) if notice else ()


def _front(of: DebriefContent) -> Iterator[str]:
    yield from _wrapped(_("Debrief: {title}").format(title=of.title))
    for label, said in of.head:
        yield from _wrapped(said, f"{label + ':':<9}")
    yield from ("", _("RESULT: {result}").format(result=of.result))
    for gate in of.gates:
        yield from _wrapped(f"{gate.asks}: {gate.stands}", f"  {gate.letter}  ")
        for each in gate.because:
            yield from _wrapped(each, "     - ")
    yield f"  {_(PLACEHOLDER)}"
    if of.sure_and_wrong:
        yield from ("", _("SURE, AND NOT SO: talk about these first"))
        yield from _listed(of.sure_and_wrong)
    if of.talking:
        yield from ("", _("TO TALK ABOUT"))
        for number, each in enumerate(of.talking, 1):
            yield from _wrapped(each, f"  {number}. ")


def _middle(of: DebriefContent) -> Iterator[str]:
    yield from _departures(of)
    if of.chain:
        yield from ("", _("WHAT CAME OF IT"))
        yield from _listed(of.chain)
    yield from ("", _("TIMELINE, BY ROLE"))
    for row in of.rows:
        yield from _wrapped("; ".join(row.said) or _("nothing written down"), f"  {row.role}: ")
    if of.silences:
        yield from _wrapped(", ".join(of.silences), _("  Silent for over 8 s: "))
    if of.loops:
        yield from ("", _("REQUESTS: asked, read back, reported done"))
        for loop in of.loops:
            yield from _loop(loop)
    if of.figures:
        yield from ("", _("FIGURES OF THIS ONE RUN"))
        for figure in of.figures:
            yield from _wrapped(f"{figure.what}: {figure.told}", "  ")


def _departures(of: DebriefContent) -> Iterator[str]:
    if of.first_departure:
        yield from ("", of.first_title.upper())
        yield from _first(of.first_departure)
    if of.departures:
        yield from ("", _("FURTHER DEPARTURES THAT MATTER"))
        yield from _listed(of.departures)
    if of.lesser:
        yield from ("", _("LESSER DEPARTURES"))
        yield from _listed(of.lesser)


def _back(of: DebriefContent) -> Iterator[str]:
    yield from ("", _("TWO OPEN QUESTIONS"))
    for number, each in enumerate(of.questions, 1):
        yield from _wrapped(each, f"  {number}. ")
    yield from ("", _("THE SYSTEM, NOT PEOPLE: kit, phone, chart"))
    for each in of.system:
        yield from _wrapped(each, "  - ")
        yield f"    {_(TO_WRITE)}"
    if not of.system:
        yield _("  Nothing written down. Found: ____________________________________")
        yield f"    {_(TO_WRITE)}"
    yield from ("", _("ONE THING TO TAKE AWAY"))
    yield from _wrapped(of.take_away, "  ")
    yield from (
        "",
        _("NEXT DUE: {when}").format(when=of.next_due or _("see chamberwise progress")),
    )


def _first(of: FirstDeparture) -> Iterator[str]:
    if of.shown:
        yield from _wrapped(of.shown, _("  Shown:   "))
    yield from _wrapped(of.done, _("  Done:    "))
    yield from _wrapped(of.line, _("  Pathway: "))
    if of.why:
        why = _("Why this step")
        yield from _wrapped(of.why, f"  {why}: ")
    for source in of.sources:
        yield from _wrapped(source, _("  Source:  "))


def _loop(of: LoopRow) -> Iterator[str]:
    said = _("{request}, of {of}: asked {asked}, read back {read_back}, done {done}").format(
        request=of.request, of=of.of, asked=of.asked, read_back=of.read_back, done=of.done
    )
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
