"""A sheet in a language that nobody has reviewed: marked, a draft, with a stamp of its own."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from io import BytesIO

import pytest
from chamberwise.engine.language.speaking import speaking
from chamberwise.engine.stamp.verdict import stamps
from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.audit.text import report_text
from chamberwise.exports.control.content import DRAFT, UNREVIEWED
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.full.extract import full_pathway
from chamberwise.exports.full.round_trip import differences
from chamberwise.exports.paper.sheet import Role
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.printing import Job, laid_out, ordered, sheet_of
from chamberwise.exports.printing.sheet_name import sheet_names, sheet_told
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.typesetting.measuring import Ruler
from pypdf import PdfReader

from tests.exports.audit.planted_words import note, says
from tests.exports.audit.sheets import CONTROL, Case, wall
from tests.exports.flow.stage import control, shipped

DAY = date(2026, 11, 25)
SIZED = Sized(Paper.A4, Turn.LANDSCAPE)
PATHWAY = "anterior-vitrectomy"


def german(case: Case) -> Case:
    """Return a sheet said to be in German, whatever its words."""
    return replace(case, sheet=replace(case.sheet, language="de"))


def test_an_approved_sheet_is_a_draft_in_a_language_nobody_reviewed() -> None:
    assert CONTROL.is_approved
    foreign = replace(CONTROL, translation="Deutsch")
    assert not foreign.is_approved
    assert foreign.marks == (DRAFT, UNREVIEWED)


def test_every_control_made_in_german_is_marked() -> None:
    with speaking("de"):
        made = control(shipped(), PATHWAY)
        page = Frame(Ruler(), made, SIZED.format).page((), 1, 1)
        words = " ".join(each.text for each in page.texts if each.role is Role.FOOTER)
    assert made.translation == "Deutsch"
    assert not made.is_approved
    assert "Deutsch: Diese Übersetzung hat niemand aus der Klinik geprüft." in words
    assert control(shipped(), PATHWAY).translation == ""


def test_the_file_says_its_language() -> None:
    # ISO 14289-1, 7.2: the natural language of a document is told, here in the catalogue's /Lang.
    with speaking("de"):
        orders = ordered(Job(shipped(), PATHWAY, DAY), [(Kind.KIT_LIST, SIZED)])
        pdf = to_pdf(sheet_of(laid_out(orders)))
    catalogue = PdfReader(BytesIO(pdf)).trailer["/Root"]
    assert catalogue.get_object()["/Lang"] == "de"


def test_a_german_file_says_all_of_the_pathway_and_nothing_else() -> None:
    with speaking("de"):
        orders = ordered(Job(shipped(), PATHWAY, DAY), [(Kind.FULL, Sized(Paper.A4))])
        pdf = to_pdf(sheet_of(laid_out(orders)))
        assert differences(full_pathway(shipped(), PATHWAY), pdf) == ()


def test_the_stamp_tells_which_language_a_sheet_is_in() -> None:
    job = Job(shipped(), PATHWAY, DAY)
    ((_kind, english),) = ordered(job, [(Kind.WALL_CHART, SIZED)])
    with speaking("de"):
        ((_kind, foreign),) = ordered(job, [(Kind.WALL_CHART, SIZED)])
    assert english.control.code != foreign.control.code
    now = stamps(shipped(), [*sheet_names("en"), *sheet_names("de")])
    for code, told in (
        (english.control.code, "wall chart"),
        (foreign.control.code, "wall chart (Deutsch)"),
    ):
        found = now[code]
        assert sheet_told(found.sheet) == told
        assert found.pathway == PATHWAY


@pytest.mark.parametrize(
    ("rule", "wrong", "right"),
    [
        # Common practice, no source: the German forms of what the English rules forbid.
        ("MED-01", "Gib 5,0 mg", "Gib 5 mg"),
        ("MED-02", "Spritze ,5 mL", "Spritze 0,5 mL"),
        ("MED-03", "Gib 2,5mg", "Gib 2,5 mg"),
        ("MED-05", "Gib 50 µg", "Gib 50 Mikrogramm"),
        ("MED-07", "Gib 4 IE", "Gib 4 Einheiten"),
        ("MED-10", "Spritze 2 ccm", "Spritze 2 mL"),
        ("MED-17", "Nimm Adrenalin 1:1.000", "Nimm Adrenalin 1 mg pro mL"),
        ("MED-21", "Ziehe 0,5\nMilliliter auf", "Ziehe 0,5 Milliliter auf"),
        ("LAN-06", "Nicht aspirieren ohne Färbung", "Erst färben, dann aspirieren"),
    ],
)
def test_german_words_are_searched(rule: str, wrong: str, right: str) -> None:
    assert faults(rule, german(says(wrong)(wall())))
    assert not faults(rule, german(says(right)(wall())))


def test_a_question_with_a_german_negator() -> None:
    planted = note("Ist kein Glaskörper am Schnitt?", Role.QUESTION)
    assert faults("LAN-08", german(planted(wall())))


def faults(rule: str, case: Case) -> list[str]:
    (wanted,) = (each for each in RULES if each.id == rule)
    report = audit(case.sheet, case.pdf, case.terms, rules=[wanted])
    assert not report.unmeasured
    return [each.measured for each in report.found]


def test_what_knows_no_german_says_that_it_measured_nothing() -> None:
    case = german(wall())
    unmeasured = {each.id for each in RULES if "de" not in each.languages}
    assert "MED-09" in unmeasured
    report = audit(case.sheet, case.pdf, case.terms, rules=[r for r in RULES if r.id in unmeasured])
    assert {each.rule for each in report.unmeasured} == unmeasured
    assert f"NOT MEASURED: {len(unmeasured)} rules" in report_text(report)
    assert audit(wall().sheet, wall().pdf, wall().terms, rules=RULES[:1]).unmeasured == ()
