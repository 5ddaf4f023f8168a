"""A comparison as a PDF."""

from __future__ import annotations

from chamberwise.engine.language.speaking import spoken
from chamberwise.exports.comparing.content import ComparisonShown
from chamberwise.exports.comparing.paper import comparison_pages
from chamberwise.exports.control.content import Control
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.typesetting.measuring import Ruler


def document(shown: ComparisonShown, control: Control) -> bytes:
    """Return the paper. Raises `UnfitError` and `UnprintableError`."""
    frame = Frame(Ruler(), control, Sized(Paper.A4).format)
    pages = tuple(comparison_pages(frame, shown))
    title = f"{control.title}: {control.sheet}"
    return to_pdf(Sheet(title, f"{shown.pathway}, {shown.now}", spoken().code, control.made, pages))
