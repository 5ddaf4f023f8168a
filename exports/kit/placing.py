"""The kit list as a table whose head is repeated on every page."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Block, Laid, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill
from chamberwise.exports.flow.tabling import PADDING, Cell, row, shares, titled
from chamberwise.exports.kit.content import OVER, KitList, KitRow, by_pathway
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Run, Style, Weight

TITLE = Style(16, Weight.BOLD, pitch=1.25)
HEAD = Style(10, Weight.BOLD, pitch=1.25)
PART = Style(11, Weight.BOLD)
ITEM = Style(10.5, Weight.MEDIUM)
BODY = Style(10)
REMARK = Style(9.2, ink=Ink.GREY)
LOCAL = Style(9.8)
COLUMNS = (
    N_("Item"),
    N_("Needed for"),
    N_("Local product"),
    N_("Par"),
    N_("Shelf"),
    N_("Expiry"),
    N_("Seal"),
    N_("Checked"),
)
WIDE = (4.4, 7.2, 3.2, 1.3, 1.7, 2.0, 1.7, 2.5)
TALL = (5.0, 5.0, 2.6, 1.7, 2.1, 2.4, 1.9, 3.1)
FILLED = (
    N_("Item"),
    N_("Needed for"),
    N_("Here"),
    N_("Par"),
    N_("Expiry"),
    N_("Seal"),
    N_("Checked"),
)
WIDE_FILLED = (4.4, 6.0, 5.6, 2.2, 2.0, 1.7, 2.3)
TALL_FILLED = (5.0, 4.8, 5.4, 2.3, 2.2, 1.8, 2.8)
"""Where a unit's sheet says what is used and where it lies."""
MOST_PAGES = 60
LEAST = 9.0
"""Millimetres to write in."""


def kit_pages(frame: Frame, kit: KitList) -> list[Page]:
    """Return the pages. Raises `UnfitError` where the columns are too narrow for their words."""
    body = frame.body
    area = Area(body.x, body.y, body.width, body.height)
    head = _head(frame, kit, area)
    most = area.height - sum(each.height + each.after for each in head)
    widths = shares(area.width, _columns(kit, area))
    rows = [each for part in kit.parts for each in _part(frame, kit, *part, widths, most)]
    filled = fill(rows, [area] * MOST_PAGES, head)
    return [
        frame.page(items, number, len(filled), far(items)) for number, items in enumerate(filled, 1)
    ]


def _columns(kit: KitList, area: Area) -> tuple[float, ...]:
    if kit.is_local:
        return WIDE_FILLED if area.width > area.height else TALL_FILLED
    return WIDE if area.width > area.height else TALL


def _head(frame: Frame, kit: KitList, area: Area) -> list[Laid]:
    title = Block(plain(_("Kit: {title}").format(title=kit.title)), TITLE, Role.TITLE)
    said = [kit.unset, _("Numbers are steps of the full pathway.")]
    if any(each.pathway for kit_row in kit.rows for each in kit_row.uses):
        said.append(
            _(
                "{over} a pathway that this one hands over to; before an item: needed only there."
            ).format(over=OVER)
        )
    remark = Block(plain(" ".join(said)), REMARK, Role.NOTE)
    widths = shares(area.width, _columns(kit, area))
    cells: list[Cell] = [
        (Block(plain(_(each)), HEAD, Role.HEADING),)
        for each in (FILLED if kit.is_local else COLUMNS)
    ]
    heads = row(frame.ruler, cells, widths, area.height, ground=Ink.WASH)
    return [titled(frame.ruler, title, remark, area.width), heads]


def _part(
    frame: Frame,
    kit: KitList,
    title: str,
    rows: tuple[KitRow, ...],
    widths: tuple[float, ...],
    most: float,
) -> Iterator[Laid]:
    width = sum(widths)
    band = (Block(plain(title), PART, Role.HEADING),)
    yield row(frame.ruler, [band], [width], most, keeps_next=True)
    for each in rows:
        local = [_here(kit, each), _local(each.stock)] if kit.is_local else []
        told: list[Cell] = [_item(each), _uses(each), *local]
        cells = [*told, *[()] * (len(widths) - len(told))]
        yield row(frame.ruler, cells, widths, most, least=LEAST - 2 * PADDING)


def _item(kit_row: KitRow) -> Cell:
    mark = f"{OVER} " if kit_row.only_after_handover else ""
    blocks = [Block(plain(f"{mark}{kit_row.item}"), ITEM, Role.STEP)]
    if kit_row.amount:
        blocks.append(
            Block(
                plain(_("Asked for: {amount}").format(amount=kit_row.amount)),
                REMARK,
                Role.NOTE,
                before=0.6,
            )
        )
    return tuple(blocks)


def _here(kit: KitList, kit_row: KitRow) -> Cell:
    product = Block(plain(kit.local(kit_row.product)), BODY)
    where = Block(plain(kit_row.place), LOCAL, before=0.6)
    return (product, where) if kit_row.place else (product,)


def _local(words: str) -> Cell:
    return (Block(plain(words), LOCAL),) if words else ()


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
