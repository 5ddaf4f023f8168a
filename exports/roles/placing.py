"""Role cards on A4 landscape: two to a page, each in two columns, cut apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.card_foot import card_foot
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Laid
from chamberwise.exports.flow.cutting import card_areas, cut_marks, inner_edges
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill, placed
from chamberwise.exports.flow.laying import lay, ways_out
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Item, Page
from chamberwise.exports.printing.unfit import UnfitError
from chamberwise.exports.roles.blocks import groups, head
from chamberwise.exports.roles.content import RoleCard

PADDING = 4.5
GUTTER = 5.0
CARDS = 2
COLUMNS = 2
MOST = 40
"""Cards of one duty; more is no card."""
SAID = N_("Cut on the solid lines. Cards of one duty go on one ring. Do not reduce.")


@dataclass(frozen=True, slots=True)
class _Inside:
    """The room of a card: its head, and the columns under it."""

    head: Area
    columns: tuple[Area, ...]


def role_pages(frame: Frame, cards: Sequence[RoleCard]) -> list[Page]:
    """Return the pages, duties in order. Raises `UnfitError` where a word is too wide."""
    filled = [column for card in cards for column in _filled(frame, card)]
    count = -(-len(filled) // CARDS)
    return [
        _page(frame, filled[CARDS * place : CARDS * (place + 1)], place + 1, count)
        for place in range(count)
    ]


@dataclass(frozen=True, slots=True)
class _Card:
    """One card to cut out, its items placed from the corner of the card."""

    items: tuple[Item, ...]


def _filled(frame: Frame, card: RoleCard) -> list[_Card]:
    """Return the cards of one duty: as many as it takes."""
    area = card_areas(frame.body, CARDS, 1)[0]
    top = lay(frame.ruler, [head(card, 8, 8)], area.width - 2 * PADDING, area.height)
    inside = _inside(frame, area, top[0])
    column = inside.columns[0]
    laid = lay(frame.ruler, groups(card), column.width, column.height)
    try:
        columns = fill(laid, inside.columns * MOST)
    except UnfitError as error:
        raise UnfitError(
            _("The card of {duty} does not fit.").format(duty=card.duty), ways_out()
        ) from error
    count = -(-len(columns) // COLUMNS)
    found = []
    for place in range(count):
        title = lay(frame.ruler, [head(card, place + 1, count)], inside.head.width, area.height)
        own = columns[COLUMNS * place : COLUMNS * (place + 1)]
        items = (*placed(title, inside.head), *(item for each in own for item in each))
        found.append(_Card(items))
    return found


def _inside(frame: Frame, area: Area, top: Laid) -> _Inside:
    x, y = area.x + PADDING, area.y + PADDING
    width = area.width - 2 * PADDING
    foot = card_foot(frame.ruler, frame.control, x, 0, width)
    under = y + top.height + top.after
    high = area.y + area.height - PADDING - foot.height - under
    each = (width - GUTTER * (COLUMNS - 1)) / COLUMNS
    columns = (Area(x + place * (each + GUTTER), under, each, high) for place in range(COLUMNS))
    return _Inside(Area(x, y, width, top.height), tuple(columns))


def _page(frame: Frame, cards: Sequence[_Card], number: int, of: int) -> Page:
    areas = card_areas(frame.body, CARDS, 1)
    items: list[Item] = [
        *cut_marks(frame.ruler, areas, _(SAID)),
        *inner_edges(areas, folded=False),
    ]
    for card, area in zip(cards, areas, strict=False):
        items += [moved(item, area.x - areas[0].x, area.y - areas[0].y) for item in card.items]
        x, bottom = area.x + PADDING, area.y + area.height - PADDING
        items += card_foot(frame.ruler, frame.control, x, bottom, area.width - 2 * PADDING).items
    return frame.page(tuple(items), number, of, far(items))
