"""The kit list, to order."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.kit.extract import kit_list
from chamberwise.exports.kit.placing import kit_pages
from chamberwise.exports.printing.order import Made, Order, UnfitError


def make(order: Order) -> Made:
    """Return the pages on the paper asked for. Raises `UnfitError`, also where no kit is named."""
    kit = kit_list(order.library, order.pathway)
    if not kit.rows:
        raise UnfitError(_("No step of this pathway needs kit."), (_("Name kit under `needs`."),))
    frame = Frame(order.ruler, order.control, order.sized.format)
    return Made(tuple(kit_pages(frame, kit)))
