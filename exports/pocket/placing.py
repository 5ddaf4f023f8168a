"""The pocket card on A4: four panels side by side, cut out in one strip and folded in four."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.card_foot import CardFoot, card_foot
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Group, Laid
from chamberwise.exports.flow.cutting import card_areas, cut_marks, inner_edges
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill, fits, placed
from chamberwise.exports.flow.laying import lay, ways_out
from chamberwise.exports.paper.sheet import Item, Page
from chamberwise.exports.pocket.blocks import (
    call_groups,
    decision_groups,
    due_group,
    first_groups,
    heading,
    note_groups,
    remark,
    title_group,
)
from chamberwise.exports.pocket.content import (
    NUMBERS,
    PocketCard,
    more_decisions,
    more_lines,
    more_notes,
)
from chamberwise.exports.printing.unfit import UnfitError

PADDING = 3.6
PANELS = 4
SAID = N_("Cut on the solid marks; fold on the dashed lines. Do not reduce.")


@dataclass(frozen=True, slots=True)
class Shown:
    """The page, and how many decisions, notes and told actions stand on it."""

    page: Page
    decisions: int
    notes: int
    told: int
    """First actions with who does what."""


def pocket_page(frame: Frame, card: PocketCard) -> Shown:
    """Return the page. Raises `UnfitError` when not even the shortest form of a panel fits."""
    areas = card_areas(frame.body, PANELS, 1)
    feet = [_foot(frame, area) for area in areas]
    inner = [
        Area(area.x + PADDING, area.y + PADDING, area.width - 2 * PADDING, _room(area, foot))
        for area, foot in zip(areas, feet, strict=True)
    ]
    first, told = _first(frame, card, inner[0])
    decisions, asked = _decisions(frame, card, inner[1:3])
    last, noted = _last(frame, card, inner[3])
    panels = [first, *decisions, last]
    items: list[Item] = [*cut_marks(frame.ruler, areas, _(SAID)), *inner_edges(areas, folded=True)]
    for panel, foot in zip(panels, feet, strict=True):
        items += [*panel, *foot.items]
    page = frame.page(tuple(items), 1, 1, far(items))
    return Shown(page, asked, noted, told)


def _room(area: Area, foot: CardFoot) -> float:
    return area.height - 2 * PADDING - foot.height


def _foot(frame: Frame, area: Area) -> CardFoot:
    x, bottom = area.x + PADDING, area.y + area.height - PADDING
    return card_foot(frame.ruler, frame.control, x, bottom, area.width - 2 * PADDING)


def _first(frame: Frame, card: PocketCard, area: Area) -> tuple[tuple[Item, ...], int]:
    """Return the first panel, with who does what in as many actions as there is room for."""
    for told in range(len(card.first), -1, -1):
        left = more_lines(card, told)
        rest = [remark(left)] if left else []
        actions = first_groups(card.first, told)
        laid = _laid(frame, [title_group(card), heading(_("First")), *actions, *rest], area)
        if fits(laid, area.height):
            return placed(laid, area), told
    raise UnfitError(_("The first actions do not fit on a panel of the pocket card."), ways_out())


def _decisions(
    frame: Frame, card: PocketCard, areas: list[Area]
) -> tuple[list[tuple[Item, ...]], int]:
    """Return two panels with as many decisions as fit, and how many those are."""
    for count in range(len(card.decisions), -1, -1):
        groups = [heading(_("Decide")), *decision_groups(card.decisions[:count])]
        left = more_decisions(card, count)
        rest = [remark(f"{left} {_(NUMBERS)}" if left else _(NUMBERS))]
        laid = _laid(frame, [*groups, *rest], areas[0])
        try:
            found = fill(laid, areas)
        except UnfitError:
            continue
        if count or not card.decisions:
            return [*found, *[()] * (len(areas) - len(found))], count
    raise UnfitError(_("The first decision does not fit on the pocket card."), ways_out())


def _last(frame: Frame, card: PocketCard, area: Area) -> tuple[tuple[Item, ...], int]:
    """Return the last panel with as many safety notes as fit, and how many those are."""
    for count in range(len(card.notes), -1, -1):
        groups: list[Group] = [heading(_("Call")), *call_groups(card.phones)]
        if count:
            groups += [heading(_("Keep safe")), *note_groups(card.notes[:count])]
        left = more_notes(card, count)
        groups += [remark(left)] if left else []
        laid = _laid(frame, [*groups, due_group(card.review_by)], area)
        if fits(laid, area.height):
            return placed(laid, area), count
    raise UnfitError(_("The calls do not fit on a panel of the pocket card."), ways_out())


def _laid(frame: Frame, groups: list[Group], area: Area) -> list[Laid]:
    return lay(frame.ruler, groups, area.width, area.height)
