"""Progress as plain text of at most 78 columns; every plot is readable without colour."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from textwrap import wrap

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.exports.progress.content import (
    LOCAL,
    SIGNS,
    STANDING,
    ActRow,
    CoursePlot,
    Month,
    ProgressContent,
)
from chamberwise.exports.progress.plot import bar, plot

WIDTH = 78
MOST_MONTHS = 12


def progress_text(of: ProgressContent) -> str:
    """Return progress as text that ends in a line end."""
    return "\n".join([*_lines(of), "", *wrap(_(STANDING), WIDTH), _(LOCAL), ""])


def _lines(of: ProgressContent) -> Iterator[str]:
    yield from _wrapped(_("Progress: {title}").format(title=of.title))
    runs = ngettext("{number} run that counts", "{number} runs that count", of.runs).format(
        number=of.runs
    )
    yield _("Pathway {pathway}. As of {asked_on}. {runs}.").format(
        pathway=of.pathway, asked_on=of.asked_on, runs=runs
    )
    if of.status:
        yield _("Status of the pathway: {status}").format(status=of.status)
    parts = (
        (_("DUE"), of.due),
        (_("REHEARSAL"), of.current),
        (_("MET SO FAR"), of.not_met),
    )
    for heading, said in parts:
        if said:
            yield from ("", heading)
            for each in said:
                yield from _wrapped(each, "  - ")
    if of.runs:
        yield from ("", _("RUNS: ") + ", ".join(f"{sign} {_(word)}" for sign, word in SIGNS))
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
    signs = [sign for sign, _word in SIGNS]
    yield ""
    yield _("BY MONTH")
    for each in months:
        yield f"  {each.month}  {bar(each.counts, signs, most)} {sum(each.counts)}"


def _acts(of: ProgressContent) -> Iterator[str]:
    heading = ngettext(
        "CRITICAL ACTS, in the latest run", "CRITICAL ACTS, in the latest {latest} runs", of.latest
    )
    yield from ("", heading.format(latest=of.latest))
    for row, acts in _alike(of.acts):
        for act in acts:
            yield from _wrapped(act, "  ")
        yield from _wrapped(_("left out {left_out}").format(left_out=row.left_out), "      ")
        yield from _wrapped(_("from a menu or told {helped}").format(helped=row.helped), "      ")
        yield from _wrapped(
            _("half of the runs had it done by: {median}").format(median=row.median), "      "
        )


def _alike(rows: Iterable[ActRow]) -> Iterator[tuple[ActRow, list[str]]]:
    """Yield rows that tell the same of several acts as one, with those acts."""
    found: dict[ActRow, list[str]] = {}
    for row in rows:
        found.setdefault(replace(row, act=""), []).append(row.act)
    yield from found.items()


def _course(of: CoursePlot) -> Iterator[str]:
    yield from ("", of.title.upper())
    yield from _wrapped(of.parameters, "  ")
    yield from _wrapped(of.verdict, "  ")
    if of.values:
        yield from (f"  {line}" for line in plot(of.values, of.limits))
        yield _("        run 1 to {count}").format(count=len(of.values))


def _wrapped(text: str, lead: str = "") -> list[str]:
    return wrap(lead + text, WIDTH, subsequent_indent=" " * len(lead), break_long_words=False)
