"""The brief, to order: control, stamp, page, and its audit."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date
from hashlib import sha256

from chamberwise.engine.brief.brief import Brief
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.stamp.code import stamp_of
from chamberwise.exports.audit.report import Report
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.brief.content import BriefContent
from chamberwise.exports.brief.machine import values
from chamberwise.exports.brief.placing import brief_pages
from chamberwise.exports.control.content import Control
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Sized
from chamberwise.exports.printing.finishing import finished
from chamberwise.exports.printing.kind import ListKind
from chamberwise.exports.printing.marking import subject
from chamberwise.exports.stamp.modules import modules
from chamberwise.exports.typesetting.measuring import Ruler

ASKED_WITH = "chamberwise brief LIST --stamp"
DOCUMENT = "brief"


@dataclass(frozen=True, slots=True)
class MadeBrief:
    """The finished file, the audit of it, and its stamp."""

    pdf: bytes
    report: Report
    code: str


def stamp(brief: Brief, content: BriefContent) -> str:
    """Return the stamp: the same list and shelf, worked to the same figures, have the same."""
    told = json.dumps(values(brief, content), ensure_ascii=False)
    return stamp_of(sha256(told.encode()).hexdigest(), ListKind.BRIEF.value)


def make(brief: Brief, content: BriefContent, sized: Sized, made: date) -> MadeBrief:
    """Return the page as PDF with its audit. Raises `UnfitError` or `UnprintableError`."""
    code = stamp(brief, content)
    control = _control(content, made, code)
    pages = brief_pages(Frame(Ruler(), control, sized.format), content)
    told = subject([(ListKind.BRIEF.words, code)])
    sheet = Sheet(
        _("{title}: brief").format(title=content.title),
        f"{DOCUMENT}. {told}",
        spoken().code,
        made,
        tuple(pages),
    )
    return MadeBrief(*finished(sheet, Terms(ListKind.BRIEF, sized, control)), code)


def _control(content: BriefContent, made: date, code: str) -> Control:
    """Return the control of a sheet that nobody approves and that is void after its day."""
    day = date.fromisoformat(content.day) if content.day else made
    return Control(
        title=content.title,
        sheet=ListKind.BRIEF.words,
        document=DOCUMENT,
        edition="1",
        authors=(_("made from a list and a shelf"),),
        approved_by=None,
        approved_on=None,
        reviewed=made,
        review_by=day,
        unit=content.unit or None,
        made=made,
        code=code,
        modules=modules(code),
        asked_with=ASKED_WITH,
    )
