"""A debrief as a sheet of one page; the same journal gives the same bytes."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.debrief.content import DebriefContent
from chamberwise.exports.debrief.placing import debrief_page
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.typesetting.measuring import Ruler


def debrief_pdf(of: DebriefContent, on: date) -> bytes:
    """Return the PDF of a debrief, dated by its drill. Raises `UnfitError`, `UnprintableError`."""
    title = _("Debrief: {title}").format(title=of.title)
    subject = ". ".join(f"{label}: {said}" for label, said in of.head)
    return to_pdf(Sheet(title, subject, spoken().code, on, (debrief_page(of, Ruler()),)))
