"""Progress as plain text of at most 78 columns; every plot is readable without colour."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from chamberwise.exports.progress.content import (
    LOCAL,
    SIGNS,
    STANDING,
    CoursePlot,
    Month,
    ProgressContent,
)
from chamberwise.exports.progress.plot import bar, plot

WIDTH = 78
MOST_MONTHS = 12


def progress_text(of: ProgressContent) -> str:
    """Return progress as text that ends in a line end."""
    return "\n".join([*_lines(of), "", *wrap(STANDING, WIDTH), LOCAL, ""])


def _lines(of: ProgressContent) -> Iterator[str]:
    yield from _wrapped(f"Progress: {of.title}")
    runs = "1 run that counts" if of.runs == 1 else f"{of.runs} runs that count"
    yield f"Pathway {of.pathway}. As of {of.asked_on}. {runs}."
    if of.status:
        yield f"Status of the pathway: {of.status}"
    for heading, said in (("DUE", of.due), ("REHEARSAL", of.current), ("MET SO FAR", of.not_met)):
        if said:
            yield from ("", heading)
            for each in said:
                yield from _wrapped(each, "  - ")
    if of.runs:
        yield from ("", "RUNS: " + ", ".join(f"{sign} {word}" for sign, word in SIGNS))
        yield f"  {of.strip}"
        for each in of.counted:
            yield from _wrapped(each, "  - ")
        yield from _months(of.months[-MOST_MONTHS:])
    if of.acts:
        yield from _acts(of)
    for course in of.courses:
        yield from _course(course)


def _months(months: tuple[Month, ...]) -> Iterator[str]:
    most = max((sum(each.counts) for each in months), default=0)
    signs = [sign for sign, _ in SIGNS]
    yield ""
    yield "BY MONTH"
    for each in months:
        yield f"  {each.month}  {bar(each.counts, signs, most)} {sum(each.counts)}"


def _acts(of: ProgressContent) -> Iterator[str]:
    yield from ("", f"CRITICAL ACTS, in the latest {of.latest} runs")
    for row in of.acts:
        yield from _wrapped(row.act, "  ")
        yield from _wrapped(f"left out {row.left_out}", "      ")
        yield from _wrapped(f"from a menu or told {row.helped}", "      ")
        yield from _wrapped(f"half of the runs had it done by {row.median}", "      ")


def _course(of: CoursePlot) -> Iterator[str]:
    yield from ("", of.title.upper())
    yield from _wrapped(of.parameters, "  ")
    yield from _wrapped(of.verdict, "  ")
    if of.values:
        yield from (f"  {line}" for line in plot(of.values, of.limits))
        yield f"        run 1 to {len(of.values)}"


def _wrapped(text: str, lead: str = "") -> list[str]:
    return wrap(lead + text, WIDTH, subsequent_indent=" " * len(lead), break_long_words=False)
