"""The kit list as a table whose head is repeated on every page."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Block, Laid, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill
from chamberwise.exports.flow.tabling import PADDING, Cell, row, shares, titled
from chamberwise.exports.kit.content import OVER, UNSET, KitList, KitRow, by_pathway
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Run, Style, Weight

TITLE = Style(16, Weight.BOLD, pitch=1.25)
HEAD = Style(10, Weight.BOLD, pitch=1.25)
PART = Style(11, Weight.BOLD)
ITEM = Style(10.5, Weight.MEDIUM)
BODY = Style(10)
REMARK = Style(9.2, ink=Ink.GREY)
COLUMNS = ("Item", "Needed for", "Local product", "Par", "Shelf", "Expiry", "Seal", "Checked")
WIDE = (4.4, 7.2, 3.2, 1.3, 1.7, 2.0, 1.7, 2.5)
TALL = (5.0, 5.0, 2.6, 1.7, 2.1, 2.4, 1.9, 3.1)
MOST_PAGES = 60
LEAST = 9.0
"""Millimetres to write in."""


def kit_pages(frame: Frame, kit: KitList) -> list[Page]:
    """Return the pages. Raises `UnfitError` where the columns are too narrow for their words."""
    body = frame.body
    area = Area(body.x, body.y, body.width, body.height)
    head = _head(frame, kit, area)
    most = area.height - sum(each.height + each.after for each in head)
    widths = shares(area.width, WIDE if area.width > area.height else TALL)
    rows = [each for part in kit.parts for each in _part(frame, *part, widths, most)]
    filled = fill(rows, [area] * MOST_PAGES, head)
    return [
        frame.page(items, number, len(filled), far(items)) for number, items in enumerate(filled, 1)
    ]


def _head(frame: Frame, kit: KitList, area: Area) -> list[Laid]:
    title = Block(plain(f"Kit: {kit.title}"), TITLE, Role.TITLE)
    said = [UNSET, "Numbers are steps of the full pathway."]
    if any(each.pathway for kit_row in kit.rows for each in kit_row.uses):
        said.append(
            f"{OVER} a pathway that this one hands over to; before an item: needed only there."
        )
    remark = Block(plain(" ".join(said)), REMARK, Role.NOTE)
    widths = shares(area.width, WIDE if area.width > area.height else TALL)
    cells: list[Cell] = [(Block(plain(each), HEAD, Role.HEADING),) for each in COLUMNS]
    heads = row(frame.ruler, cells, widths, area.height, ground=Ink.WASH)
    return [titled(frame.ruler, title, remark, area.width), heads]


def _part(
    frame: Frame, title: str, rows: tuple[KitRow, ...], widths: tuple[float, ...], most: float
) -> Iterator[Laid]:
    width = sum(widths)
    band = (Block(plain(title), PART, Role.HEADING),)
    yield row(frame.ruler, [band], [width], most, keeps_next=True)
    for each in rows:
        cells: list[Cell] = [_item(each), _uses(each), *[()] * (len(widths) - 2)]
        yield row(frame.ruler, cells, widths, most, least=LEAST - 2 * PADDING)


def _item(kit_row: KitRow) -> Cell:
    mark = f"{OVER} " if kit_row.only_after_handover else ""
    blocks = [Block(plain(f"{mark}{kit_row.item}"), ITEM, Role.STEP)]
    if kit_row.amount:
        blocks.append(Block(plain(f"Asked for: {kit_row.amount}"), REMARK, Role.NOTE, before=0.6))
    return tuple(blocks)


def _uses(kit_row: KitRow) -> Cell:
    return tuple(
        Block(
            (*((Run(f"{OVER} {name}: ", Weight.MEDIUM),) if name else ()), Run(steps)),
            BODY,
            of=" ".join(use.of for use in kit_row.uses if use.pathway == name),
            before=0.6,
        )
        for name, steps in by_pathway(kit_row)
    )
