"""What the report says, and what waivers do."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.report import NO_CLAIM, Report
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.audit.terms import Waiver
from chamberwise.exports.audit.text import report_text
from chamberwise.exports.audit.values import report_values

from tests.exports.audit.planted_words import says
from tests.exports.audit.sheets import Case, wall

TOP = Path(__file__).resolve().parents[3]


def reported(case: Case) -> Report:
    return audit(case.sheet, case.pdf, case.terms)


def test_rules_have_names_of_their_own_and_sources() -> None:
    names = [rule.id for rule in RULES]
    assert len(set(names)) == len(names)
    assert all(rule.title and rule.source for rule in RULES)


def test_an_error_stops_and_says_where() -> None:
    report = reported(says("Give 5.0 mg")(wall()))
    (error,) = report.errors
    assert (error.rule, error.where.page, error.where.text) == ("MED-01", 1, "Give 5.0 mg")
    assert "MED-01" in report_text(report)
    assert 'page 1, 200 mm right, 215 mm down, "Give 5.0 mg"' in report_text(report)
    assert report_values(report)["stops"] is True


def test_a_waiver_with_a_reason_lets_it_through_and_is_shown() -> None:
    case = says("Give 5.0 mg")(wall()).under(waivers=(Waiver("MED-01", "Agreed by pharmacy."),))
    report = reported(case)
    assert report.errors == ()
    assert [each.waived for each in report.of("MED-01")] == ["Agreed by pharmacy."]
    assert "WAIVED: Agreed by pharmacy." in report_text(report)
    assert "1 waived" in report_text(report)


def test_a_void_waiver_is_told_and_does_nothing() -> None:
    waivers = (Waiver("MED-01", " "), Waiver("XYZ-1", "why not"), Waiver("MED-02", "not needed"))
    report = reported(says("Give 5.0 mg")(wall()).under(waivers=waivers))
    assert [each.rule for each in report.errors] == ["MED-01"]
    assert report.said == (
        "The waiver for MED-01 gives no reason and does nothing.",
        'There is no rule "XYZ-1": its waiver does nothing.',
        "The waiver for MED-02 is not needed: nothing breaks the rule.",
    )


def test_every_rule_tells_its_worst_value_and_no_conformity_is_claimed() -> None:
    report = reported(wall())
    told = report_text(report)
    assert all(rule.id in told for rule in RULES)
    assert "worst 12.2 minutes of arc at 0.5 m" in told
    assert NO_CLAIM in told
    assert "derived from" in told
    assert not any(word in told.lower() for word in ("complies", "conformant", "certified"))
    assert json.loads(json.dumps(report_values(report)))["rules"][0]["rule"] == "LEG-01"


def test_the_program_starts_without_the_audit() -> None:
    command = (
        "from chamberwise.tui.command.main import run\nimport sys\n"
        "assert run(['--version']) == 0\n"
        "assert not [n for n in sys.modules if n.startswith('chamberwise.exports.audit')]\n"
        "assert not {'coloraide', 'pypdf', 'pypdfium2'} & set(sys.modules)"
    )
    program = [sys.executable, "-c", command]
    made = subprocess.run(program, cwd=TOP, capture_output=True, check=False)
    assert made.returncode == 0, made.stderr.decode()
