"""A comparison as a PDF, audited."""

from __future__ import annotations

from chamberwise.engine.language.speaking import spoken
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.comparing.content import ComparisonShown
from chamberwise.exports.comparing.paper import comparison_pages
from chamberwise.exports.control.content import Control
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.printing.finishing import Finished, finished
from chamberwise.exports.printing.kind import PaperKind
from chamberwise.exports.typesetting.measuring import Ruler


def document(shown: ComparisonShown, control: Control) -> Finished:
    """Return the paper. Raises `UnfitError` and `UnprintableError`."""
    sized = Sized(Paper.A4)
    frame = Frame(Ruler(), control, sized.format)
    pages = tuple(comparison_pages(frame, shown))
    title, subject = f"{control.title}: {control.sheet}", f"{shown.pathway}, {shown.now}"
    sheet = Sheet(title, subject, spoken().code, control.made, pages)
    return finished(sheet, Terms(PaperKind.COMPARISON, sized, control))
