"""A comparison on paper for the meeting that approves: both versions beside each other."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.comparing.content import ChangeShown, ComparisonShown, MetShown, Weight
from chamberwise.exports.comparing.difference import marked
from chamberwise.exports.comparing.text import NOTHING, counted, mend_told
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Block, Group, Laid, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.flow.tabling import Cell, row, shares
from chamberwise.exports.language.joining import begun
from chamberwise.exports.language.values import told
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Run, Style
from chamberwise.exports.paper.sheet import Weight as Letters

TITLE = Style(16, Letters.BOLD, pitch=1.25)
HEAD = Style(10, Letters.BOLD, pitch=1.25)
BODY = Style(10)
REMARK = Style(9.2, ink=Ink.GREY)
WIDTHS = (3.6, 4.0, 4.0)
MOST_PAGES = 60
HOW = N_(
    "What only one version has stands in [brackets]. Editorial changes are counted, not shown."
)
_NAME = re.compile(r"(?<=”) \([a-z0-9-]+\)")
"""The name of a step in its file, behind its words."""
WRITE = (N_("Decided, and on what date:"), N_("Author:"), N_("Approver, another person:"))


def comparison_pages(frame: Frame, shown: ComparisonShown) -> list[Page]:
    """Return the pages, one where the changes are few. Raises `UnfitError`."""
    body = frame.body
    area = Area(body.x, body.y, body.width, body.height)
    widths = shares(area.width, WIDTHS)
    rows = [*_rows(frame, shown, widths, area.height)]
    groups = [Group(tuple(_about(shown)), 3.0), Group(tuple(_rest(shown)), 3.0), _decision()]
    about, rest, decision = (
        each for group in groups for each in lay(frame.ruler, [group], area.width, area.height)
    )
    filled = fill([about, *rows, _gap(), rest, decision], [area] * MOST_PAGES)
    count = len(filled)
    return [frame.page(items, at, count, far(items)) for at, items in enumerate(filled, 1)]


def _about(shown: ComparisonShown) -> Iterator[Block]:
    yield Block(plain(_("What changes: {title}").format(title=shown.title)), TITLE, Role.TITLE)
    yield Block(plain(_("Was: {was}").format(was=shown.was)), BODY, before=1.0)
    yield Block(plain(_("Now: {now}").format(now=shown.now)), BODY, before=0.6)
    yield Block(plain(counted(shown)), HEAD, before=1.0)
    yield Block(plain(_(HOW)), REMARK, Role.NOTE, before=0.6)


def _rows(
    frame: Frame, shown: ComparisonShown, widths: tuple[float, ...], most: float
) -> Iterator[Laid]:
    heads: list[Cell] = [
        (Block(plain(each), HEAD, Role.HEADING),) for each in (_("Where"), _("Was"), _("Now"))
    ]
    told = [each for each in shown.changes if each.weight is not Weight.EDITORIAL]
    if told:
        yield row(frame.ruler, heads, widths, most, ground=Ink.WASH, keeps_next=True)
    for change in told:
        yield row(frame.ruler, _cells(change), widths, most)
    for verdict in shown.verdicts:
        cells = _beside(_("RULE"), verdict.title, verdict.was, verdict.now)
        yield row(frame.ruler, cells, widths, most)
    if shown.walk:
        moves = (f"{each.text} {each.answer}".strip() for each in shown.walk.moves)
        way = _("After: {moves}").format(moves=_("; then: ").join(moves) or _(NOTHING))
        cells = _beside(_("WALK"), way, _met(shown.walk.was), _met(shown.walk.now))
        yield row(frame.ruler, cells, widths, most)


def _beside(what: str, where: str, was: str, now: str) -> list[Cell]:
    told = (Block((Run(f"{what} ", Letters.BOLD), Run(where)), BODY),)
    return [told, *((Block(runs, BODY),) for runs in marked(was, now))]


def _cells(change: ChangeShown) -> list[Cell]:
    weight = Run(f"{told(change.weight).upper()} ", Letters.BOLD)
    where = Block((weight, Run(f"{_NAME.sub('', change.where)}: {change.kind}")), BODY)
    why = Block(plain(begun(change.why)), REMARK, Role.NOTE, before=0.6)
    sides = marked(*(_NAME.sub("", each) or _(NOTHING) for each in (change.was, change.now)))
    return [(where, why), *((Block(runs, BODY),) for runs in sides)]


def _gap() -> Laid:
    return Laid((), 0.0, 3.0)


def _rest(shown: ComparisonShown) -> Iterator[Block]:
    if shown.walk is None:
        yield Block(plain(shown.behaviour), BODY)
    if shown.standing:
        yield Block(
            plain(_("Rules now: {standing}.").format(standing=shown.standing)), BODY, before=1.0
        )
    if shown.cases:
        number = sum(each.count for each in shown.cases)
        yield Block(
            plain(_("Cases with another plan or outcome: {number}.").format(number=number)),
            BODY,
            before=0.6,
        )
    for lead, names in (
        (_("Print anew: every sheet of "), shown.reprint),
        (
            _("Take down: "),
            tuple(
                f"{each.sheet} {each.code}, {each.hangs or _('no place told')}"
                for each in shown.take_down
            ),
        ),
        (_("Hand out anew: role cards of "), shown.cards),
        (_("Rehearse again: "), shown.rehearse),
        (_("Mend the sheet: "), tuple(map(mend_told, shown.mend))),
        (_("Drill again: "), tuple(each.title for each in shown.drills)),
    ):
        if names:
            yield Block(plain(f"{lead}{', '.join(names)}."), BODY, before=0.6)


def _met(met: MetShown) -> str:
    return f"{met.lead}: {met.text}. {' '.join(met.lines)}"


def _decision() -> Group:
    blocks = (Block(plain(_(each)), BODY, before=3.0, to_write=True) for each in WRITE)
    return Group(tuple(blocks), 0.0)
