"""A record of drills as a sheet of one page; the same runs give the same bytes."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.progress.content import ProgressContent
from chamberwise.exports.progress.placing import record_page
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.typesetting.measuring import Ruler


def record_pdf(of: ProgressContent, on: date) -> bytes:
    """Return the PDF of a record, dated. Raises `UnfitError`, `UnprintableError`."""
    title = _("Record of drills: {title}").format(title=of.title)
    page = record_page(of, Ruler())
    return to_pdf(
        Sheet(
            title,
            _("Pathway {pathway}, {asked_on}").format(pathway=of.pathway, asked_on=of.asked_on),
            spoken().code,
            on,
            (page,),
        )
    )
