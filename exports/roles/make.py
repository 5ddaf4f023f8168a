"""Role cards, to order."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import Made, Order, UnfitError
from chamberwise.exports.roles.content import NO_TIMES
from chamberwise.exports.roles.extract import role_cards
from chamberwise.exports.roles.placing import role_pages

SIZED = Sized(Paper.A4, Turn.LANDSCAPE)


def make(order: Order) -> Made:
    """Return the pages, always A4 landscape. Raises `UnfitError`, also where nobody acts."""
    cards = role_cards(order.library, order.pathway)
    if not cards:
        raise UnfitError(
            _("No duty acts in this pathway."), (_("Add an action with a `do` line."),)
        )
    pages = role_pages(Frame(order.ruler, order.control, SIZED.format), cards)
    told = (
        [] if order.sized == SIZED else [_("Role cards are made on A4 landscape, two to a page.")]
    )
    if any(not card.has_times for card in cards):
        told.append(_(NO_TIMES))
    return Made(tuple(pages), tuple(told))
