"""The pocket card, to order."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.pocket.content import more_decisions, more_lines, more_notes
from chamberwise.exports.pocket.extract import pocket_card
from chamberwise.exports.pocket.placing import pocket_page
from chamberwise.exports.printing.order import Made, Order

SIZED = Sized(Paper.A4, Turn.LANDSCAPE)


def make(order: Order) -> Made:
    """Return one page, always A4 landscape. Raises `UnfitError`."""
    card = pocket_card(order.library, order.pathway)
    shown = pocket_page(Frame(order.ruler, order.control, SIZED.format), card)
    told = [more_decisions(card, shown.decisions), more_notes(card, shown.notes)]
    told.append(more_lines(card, shown.told))
    if order.sized != SIZED:
        told.append(_("The pocket card is made on A4 landscape, which is folded in four."))
    return Made((shown.page,), tuple(each for each in told if each))
