"""A debrief as a sheet of one page, audited; the same journal gives the same bytes."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.debrief.content import DebriefContent
from chamberwise.exports.debrief.placing import debrief_page
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.printing.finishing import Finished, finished
from chamberwise.exports.printing.kind import PaperKind
from chamberwise.exports.typesetting.measuring import Ruler


def debrief_paper(of: DebriefContent, on: date) -> Finished:
    """Return a debrief, dated by its drill. Raises `UnfitError`, `UnprintableError`."""
    title = _("Debrief: {title}").format(title=of.title)
    subject = ". ".join(f"{label}: {said}" for label, said in of.head)
    sheet = Sheet(title, subject, spoken().code, on, (debrief_page(of, Ruler()),))
    return finished(sheet, Terms(PaperKind.DEBRIEF, Sized(Paper.A4)))
