"""A record of drills for an annual review: one side of A4 in two columns."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chamberwise.exports.flow.block import Block, Group, plain
from chamberwise.exports.flow.two_columns import GAP, two_columns
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Run, Style, Weight
from chamberwise.exports.progress.content import SIGNS, STANDING, ActRow, ProgressContent
from chamberwise.exports.typesetting.measuring import Ruler

TITLE = Style(15, Weight.BOLD, pitch=1.2)
HEAD = Style(10.5, Weight.BOLD, pitch=1.25)
BODY = Style(9.6)
REMARK = Style(9.2, ink=Ink.GREY, pitch=1.25)
MOST_MONTHS = 12
MADE_BY = "Kept by whoever drilled, on one machine, without a name. Seen by, and when:"

Section = tuple[str, Sequence[Block]]


def record_page(of: ProgressContent, ruler: Ruler) -> Page:
    """Return the page. Raises `UnfitError` where the critical acts are too many for it."""
    groups = [
        Group((Block(plain(title), HEAD, Role.HEADING), *blocks), after=GAP)
        for title, blocks in _sections(of)
    ]
    return two_columns(ruler, _head(of), groups, _foot())


def _sections(of: ProgressContent) -> Iterator[Section]:
    yield "Runs that count", _listed(of.counted or ("none yet",))
    if of.months:
        yield "By month", _listed(_months(of))
    yield "Editions drilled", _listed(of.editions or ("none yet",))
    if of.current:
        yield "Rehearsal", _listed(of.current)
    if of.not_met:
        yield "Met", _listed(of.not_met)
    for course in of.courses:
        yield course.title, _listed((course.verdict, course.parameters))
    if of.acts:
        remark = Block(plain(f"In the latest {of.latest} runs."), REMARK, Role.NOTE, before=0.6)
        yield "Critical acts", [remark, *(block for row in of.acts for block in _act(row))]
    yield "Due", _listed(of.due)


def _months(of: ProgressContent) -> Iterator[str]:
    words = [word for _, word in SIGNS]
    for month in of.months[-MOST_MONTHS:]:
        counts = zip(words, month.counts, strict=True)
        yield f"{month.month}: " + ", ".join(f"{count} {word}" for word, count in counts if count)


def _act(row: ActRow) -> Iterator[Block]:
    yield Block(plain(row.act, Weight.MEDIUM), BODY, before=1.0)
    said = (
        f"left out {row.left_out}",
        f"from a menu or told {row.helped}",
        f"half by {row.median}",
    )
    for each in said:
        yield Block(plain(each), REMARK, Role.NOTE, indent=4.0, before=0.3)


def _head(of: ProgressContent) -> Group:
    runs = f"{of.runs} run{'s' * (of.runs != 1)} that count"
    status = f"Status of the pathway: {of.status}. " if of.status else ""
    told = f"{status}Pathway {of.pathway}. As of {of.asked_on}. {runs}."
    title = Block(plain(f"Record of drills: {of.title}"), TITLE, Role.TITLE)
    return Group((title, Block(plain(told), REMARK, Role.NOTE, before=0.6)), GAP)


def _foot() -> Group:
    seen = Block(plain(MADE_BY), REMARK, Role.NOTE, to_write=True)
    runs = (Run("Follow local protocol. ", Weight.BOLD), Run(STANDING))
    return Group((seen, Block(runs, REMARK, Role.FOOTER, before=2.0)), 0.0)


def _listed(said: Iterable[str]) -> list[Block]:
    return [Block(plain(each), BODY, indent=4.0, before=0.6, lead="•") for each in said]
