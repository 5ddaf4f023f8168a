"""The case table: sections under repeated heads, over as many pages as it takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.case_sheet.content import (
    IMPOSSIBLE,
    STANDING,
    CaseTablePaper,
    Head,
    Row,
    Section,
)
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Block, Group, Laid, Panel, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill, placed
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.flow.tabling import Cell, row, shares, titled
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Item, Page, Role, Run, Style, Weight

TITLE = Style(16, Weight.BOLD, pitch=1.25)
HEAD = Style(10, Weight.BOLD, pitch=1.25)
BODY = Style(10)
REMARK = Style(9.2, ink=Ink.GREY)
NOTE = Style(10)
HANGS = N_("hangs on")
NARROW, BROAD = 12, 34
"""Letters between which a column's share of the width is taken."""
GUTTER = 8.0
BAND = 116.0
"""Millimetres: the widest half of a band, so that its lines stay short."""
MOST_PAGES = 200


def case_pages(frame: Frame, table: CaseTablePaper) -> list[Page]:
    """Return the pages. Raises `UnfitError` where a column is too narrow for its words."""
    body = frame.body
    area = Area(body.x, body.y, body.width, body.height)
    widths = shares(area.width, _parts(table))
    head = _head(frame, table, area, widths)
    most = area.height - sum(each.height + each.after for each in head)
    laid = [each for one in table.sections for each in _section(frame, one, widths, most)]
    pages = fill(laid, [area] * MOST_PAGES, head) if laid else []
    pages += _last_pages(frame, table, area)
    return [
        frame.page(items, number, len(pages), far(items)) for number, items in enumerate(pages, 1)
    ]


def _last_pages(frame: Frame, table: CaseTablePaper, area: Area) -> list[tuple[Item, ...]]:
    """Return what stands after the table, in two columns a page."""
    title = _title(frame, table, area.width)
    top = title.height + title.after
    width, high = (area.width - GUTTER) / 2, area.height - top
    columns = [
        Area(area.x + place * (width + GUTTER), area.y + top, width, high) for place in (0, 1)
    ]
    filled = fill(lay(frame.ruler, [*_after(table)], width, high), columns * MOST_PAGES)
    return [
        (*placed([title], area), *(item for own in filled[place : place + 2] for item in own))
        for place in range(0, len(filled), 2)
    ]


def _parts(table: CaseTablePaper) -> list[float]:
    parts: list[float] = []
    for place, title in enumerate(table.columns):
        texts = [title, *(each.cells[place] for one in table.sections for each in one.rows)]
        parts.append(min(BROAD, max(NARROW, *map(len, texts))))
    return [*parts, float(NARROW)]


def _title(frame: Frame, table: CaseTablePaper, width: float) -> Laid:
    title = Block(plain(_("{title}: cases and plans").format(title=table.title)), TITLE, Role.TITLE)
    return titled(frame.ruler, title, Block(plain(_(STANDING)), REMARK, Role.NOTE), width)


def _head(frame: Frame, table: CaseTablePaper, area: Area, widths: tuple[float, ...]) -> list[Laid]:
    cells: list[Cell] = [
        (Block(plain(_capital(each)), HEAD, Role.HEADING),) for each in (*table.columns, _(HANGS))
    ]
    heads = row(frame.ruler, cells, widths, area.height, ground=Ink.WASH)
    return [_title(frame, table, area.width), heads]


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _section(
    frame: Frame, section: Section, widths: tuple[float, ...], most: float
) -> Iterator[Laid]:
    """Yield the heads and their rows; where a page is too short, the heads once more."""
    heads = [
        _band(frame, each, _("Or: ") if place else "", sum(widths), most)
        for place, each in enumerate(section.heads)
        if each.findings
    ]
    rows = [row(frame.ruler, [*_cells(each)], widths, most) for each in section.rows]
    taken = sum(each.height for each in heads)
    if taken > most / 2:
        yield from (*heads, *rows)
        return
    part: list[Laid] = []
    for each in rows:
        if part and taken + sum(one.height for one in (*part, each)) > most:
            yield from _kept([*heads, *part])
            part = []
        part.append(each)
    yield from _kept([*heads, *part])


def _kept(laid: list[Laid]) -> Iterator[Laid]:
    """Yield what stays on one page: each keeps the next but the last."""
    *others, last = laid
    yield from (replace(each, keeps_next=True) for each in others)
    yield last


def _band(frame: Frame, head: Head, before: str, width: float, most: float) -> Laid:
    """Return the findings on the left, and the plans that they settle on the right."""
    (first, value), *rest = head.findings
    named = [(f"{before}{first}", value), *rest]
    found = tuple(_line(name, said, Weight.BOLD) for name, said in named)
    plans = [
        _line(_("plan: {name}").format(name=name), said, Weight.MEDIUM) for name, said in head.plans
    ]
    if head.marks:
        plans.append(
            Block(
                plain(_("Each row hangs on {marks}.").format(marks=" ".join(head.marks))),
                BODY,
                before=1.1,
            )
        )
    half = min(width / 2, BAND)
    cells: list[Cell] = [found, tuple(plans), *([()] if width > 2 * half else [])]
    widths = [half, half, width - 2 * half][: len(cells)]
    return row(frame.ruler, cells, widths, most, ground=Ink.DECISION_WASH, keeps_next=True)


def _line(name: str, said: str, weight: Weight) -> Block:
    runs = (Run(f"{_capital(name)}: "), Run(said, weight))
    return Block(runs, BODY, Role.HEADING if weight is Weight.BOLD else Role.LINE, before=0.9)


def _cells(each: Row) -> Iterator[Cell]:
    *first, last = each.cells
    yield from ((Block(plain(said), BODY),) for said in first)
    remark = (Block(plain(each.remark), REMARK, Role.NOTE, before=0.6),) if each.remark else ()
    yield (Block(plain(last), BODY), *remark)
    yield (Block(plain(" ".join(each.marks) or "–"), BODY),)


def _after(table: CaseTablePaper) -> Iterator[Group]:
    if table.notes:
        yield _heading(_("What rows hang on"))
        yield from (_item(f"{mark}", text) for mark, text in table.notes)
    if table.all_hang_on:
        yield _item(
            _("all"),
            _("Every row hangs on {all_hang_on}.").format(all_hang_on=" ".join(table.all_hang_on)),
        )
    if table.impossible:
        yield _heading(_(IMPOSSIBLE))
    for one in table.impossible:
        runs = (Run(f"{one.when}. ", Weight.MEDIUM), Run(one.told))
        yield Group((Block(runs, NOTE, indent=9.0, lead="×"),), 1.4)
    if table.assumed:
        yield _heading(_("Taken for granted"))
    for name, said in table.assumed:
        yield Group((Block((Run(f"{name}: ", Weight.MEDIUM), Run(said)), NOTE),), 1.2)
    yield Group((Block(plain(table.completeness), NOTE, Role.NOTE),), 0.0)


def _heading(text: str) -> Group:
    band = Panel(Ink.WASH, Ink.WASH, 0, 1.2)
    block = Block(plain(text), HEAD, Role.HEADING)
    return Group((block,), 1.8, keeps_next=True, panel=band)


def _item(mark: str, text: str) -> Group:
    return Group((Block(plain(text), NOTE, indent=9.0, lead=mark),), 1.4)
