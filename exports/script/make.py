"""The reader's script, to order."""

from __future__ import annotations

from chamberwise.exports.control.frame import Frame
from chamberwise.exports.printing.order import Made, Order
from chamberwise.exports.script.extract import script
from chamberwise.exports.script.placing import script_pages


def make(order: Order) -> Made:
    """Return the pages on the paper asked for. Raises `UnfitError`."""
    frame = Frame(order.ruler, order.control, order.sized.format)
    return Made(tuple(script_pages(frame, script(order.library, order.pathway))))
