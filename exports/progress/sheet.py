"""A record of drills as a sheet of one page, audited; the same runs give the same bytes."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.printing.finishing import Finished, finished
from chamberwise.exports.printing.kind import PaperKind
from chamberwise.exports.progress.content import ProgressContent
from chamberwise.exports.progress.placing import record_page
from chamberwise.exports.typesetting.measuring import Ruler


def record_paper(of: ProgressContent, on: date) -> Finished:
    """Return a record, dated. Raises `UnfitError`, `UnprintableError`."""
    title = _("Record of drills: {title}").format(title=of.title)
    subject = _("Pathway {pathway}, {asked_on}").format(pathway=of.pathway, asked_on=of.asked_on)
    sheet = Sheet(title, subject, spoken().code, on, (record_page(of, Ruler()),))
    return finished(sheet, Terms(PaperKind.RECORD, Sized(Paper.A4)))
