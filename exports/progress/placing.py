"""A record of drills for an annual review: one side of A4 in two columns."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW
from chamberwise.exports.flow.block import Block, Group, plain
from chamberwise.exports.flow.two_columns import GAP, two_columns
from chamberwise.exports.language.unreviewed import unreviewed_notice
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Run, Style, Weight
from chamberwise.exports.progress.content import SIGNS, STANDING, ActRow, ProgressContent
from chamberwise.exports.typesetting.measuring import Ruler

TITLE = Style(15, Weight.BOLD, pitch=1.2)
HEAD = Style(10.5, Weight.BOLD, pitch=1.25)
BODY = Style(9.7)
REMARK = Style(9.2, ink=Ink.GREY, pitch=1.25)
MOST_MONTHS = 12
MADE_BY = N_("Kept by whoever drilled, on one machine, without a name. Seen by, and when:")

Section = tuple[str, Sequence[Block]]


def record_page(of: ProgressContent, ruler: Ruler) -> Page:
    """Return the page. Raises `UnfitError` where the critical acts are too many for it."""
    groups = [
        Group((Block(plain(title), HEAD, Role.HEADING), *blocks), after=GAP)
        for title, blocks in _sections(of)
    ]
    return two_columns(ruler, _head(of), groups, _foot())


def _sections(of: ProgressContent) -> Iterator[Section]:
    yield _("Runs that count"), _listed(of.counted or (_("none yet"),))
    if of.months:
        yield _("By month"), _listed(_months(of))
    yield _("Editions drilled"), _listed(of.editions or (_("none yet"),))
    if of.current:
        yield _("Rehearsal"), _listed(of.current)
    if of.not_met:
        yield _("Met"), _listed(of.not_met)
    for course in of.courses:
        yield course.title, _listed((course.verdict, course.parameters))
    if of.acts:
        remark = Block(
            plain(_("In the latest {latest} runs.").format(latest=of.latest)),
            REMARK,
            Role.NOTE,
            before=0.6,
        )
        yield _("Critical acts"), [remark, *(block for row in of.acts for block in _act(row))]
    yield _("Due"), _listed(of.due)


def _months(of: ProgressContent) -> Iterator[str]:
    words = [_(word) for _sign, word in SIGNS]
    for month in of.months[-MOST_MONTHS:]:
        counts = zip(words, month.counts, strict=True)
        yield f"{month.month}: " + ", ".join(f"{count} {word}" for word, count in counts if count)


def _act(row: ActRow) -> Iterator[Block]:
    yield Block(plain(row.act, Weight.MEDIUM), BODY, before=1.0)
    said = (
        _("left out {left_out}").format(left_out=row.left_out),
        _("from a menu or told {helped}").format(helped=row.helped),
        _("half by: {median}").format(median=row.median),
    )
    for each in said:
        yield Block(plain(each), REMARK, Role.NOTE, indent=4.0, before=0.3)


def _head(of: ProgressContent) -> Group:
    runs = ngettext("{number} run that count", "{number} runs that count", of.runs)
    counted = runs.format(number=of.runs)
    status = _("Status of the pathway: {status}. ").format(status=of.status) if of.status else ""
    told = status + _("Pathway {pathway}. As of {asked_on}. {runs}.").format(
        pathway=of.pathway, asked_on=of.asked_on, runs=counted
    )
    title = Block(plain(_("Record of drills: {title}").format(title=of.title)), TITLE, Role.TITLE)
    return Group((title, Block(plain(told), REMARK, Role.NOTE, before=0.6)), GAP)


def _foot() -> Group:
    seen = Block(plain(_(MADE_BY)), REMARK, Role.NOTE, to_write=True)
    runs = (
        Run(f"{_(FOLLOW)} ", Weight.BOLD),
        Run(_(STANDING)),
        *((Run(f" {foreign}", Weight.BOLD),) if (foreign := unreviewed_notice()) else ()),
        Run(" " + _("Page {page} of {pages}").format(page=1, pages=1)),
    )
    return Group((seen, Block(runs, REMARK, Role.FOOTER, before=2.0)), 0.0)


def _listed(said: Iterable[str]) -> list[Block]:
    return [Block(plain(each), BODY, indent=4.0, before=0.6, lead="•") for each in said]
