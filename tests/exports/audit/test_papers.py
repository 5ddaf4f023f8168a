"""Papers of runs and of changes: audited like every sheet, by the rules that can be theirs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest
from chamberwise.engine.language.speaking import speaking
from chamberwise.exports.audit.kinds import QUOTING
from chamberwise.exports.audit.report import Report
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.comparing.document import document
from chamberwise.exports.debrief import placing
from chamberwise.exports.debrief.sheet import debrief_paper
from chamberwise.exports.printing.finishing import Finished
from chamberwise.exports.printing.kind import PaperKind
from chamberwise.exports.progress.extract import progress_content
from chamberwise.exports.progress.sheet import record_paper
from chamberwise.exports.typesetting.compiling import UnprintableError

from tests.conformance.driver import library
from tests.engine.comparing.versions import PATHWAY, old
from tests.exports.comparing.test_paper import shown
from tests.exports.flow.stage import control
from tests.exports.progress.test_progress_text import MET, NOT_YET, SIGN, progress, run
from tests.support.by_the_book import doings, drilled
from tests.support.debriefed import content, eventful

ON = date(2026, 11, 25)


def debrief() -> Finished:
    return debrief_paper(content(eventful()), ON)


def long_debrief() -> Finished:
    script = [f"{place * 3} {doing}" for place, doing in enumerate(doings()[::2])]
    return debrief_paper(content(drilled(script)), ON)


def record() -> Finished:
    found = progress(*[NOT_YET] * 2, *[MET] * 9, latest=(run(),) * 3)
    return record_paper(progress_content(library(), found, SIGN), ON)


def comparison() -> Finished:
    return document(shown(), control(old().library, PATHWAY))


PAPERS = [
    *((language, make) for language in ("en", "de") for make in (debrief, long_debrief, record)),
    ("en", comparison),
]


def errors(report: Report) -> list[str]:
    return [f"{each.rule}: {each.measured} {each.where}" for each in report.errors]


@pytest.mark.parametrize(("language", "make"), PAPERS)
def test_the_audit_finds_no_error(language: str, make: Callable[[], Finished]) -> None:
    with speaking(language):
        assert errors(make().report) == []


def test_a_letter_too_small_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """9.4 points are 1.81 mm and 15.6 minutes of arc at 0.4 m; 16 are asked (LEG-01)."""
    monkeypatch.setattr(placing, "BODY", replace(placing.BODY, size=9.4))
    rules = {each.rule for each in debrief().report.errors}
    assert rules == {"LEG-01", "LEG-05"}


def test_a_letter_that_cannot_be_printed_is_refused() -> None:
    of = replace(content(eventful()), take_away="\u05d0")
    with pytest.raises(UnprintableError, match="right to left"):
        debrief_paper(of, ON)


def test_rules_of_document_control_are_not_of_papers_that_nobody_approves() -> None:
    report = debrief().report
    left_out = {each.rule for each in report.judged if not each.applies}
    assert {"DOC-01", "DOC-02", "DOC-03", "DOC-04", "DOC-05", "DOC-09"} <= left_out
    assert not left_out & {"DOC-10", "STR-08", "STR-17", "LEG-01", "LEG-05", "PRT-01"}
    judged = {each.rule for each in comparison().report.judged if each.applies}
    assert {"DOC-01", "DOC-02", "DOC-05"} <= judged


def test_rules_on_wording_are_not_of_papers_that_quote() -> None:
    for rule in RULES:
        if rule.id.startswith("MED") and rule.id != "MED-21":
            assert not rule.kinds & QUOTING, rule.id
            assert PaperKind.RECORD in rule.kinds, rule.id
