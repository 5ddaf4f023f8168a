"""A paper that is made at once: no letter that cannot be printed, the file, and the audit of it."""

from __future__ import annotations

from typing import NamedTuple

from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.report import Report
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.printing.letters import refuse_letters
from chamberwise.exports.typesetting.compiling import to_pdf


class Finished(NamedTuple):
    """The finished file and the audit of it."""

    pdf: bytes
    report: Report


def finished(sheet: Sheet, terms: Terms) -> Finished:
    """Return the PDF of a sheet with its audit. Raises `UnprintableError`."""
    refuse_letters(sheet)
    pdf = to_pdf(sheet)
    return Finished(pdf, audit(sheet, pdf, terms))
