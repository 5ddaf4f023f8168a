"""Every diagnostic is explained, and its examples are what they are called."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from chamberwise.engine.brief.listing import read_list
from chamberwise.engine.brief.stock import read_stock
from chamberwise.engine.checks.declared import declared
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.reading.library import File, read_text
from chamberwise.exports.audit.rules.registry import RULES as AUDIT
from chamberwise.exports.explaining.content import Explained
from chamberwise.exports.explaining.every_code import every_code
from chamberwise.exports.explaining.extract import explanations
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.command.briefing import SHELF
from tests.engine.drill.checking.test_check import FAULTS
from tests.engine.local.stage import problems, sheet
from tests.explaining.examples import KEPT, as_kept
from tests.explaining.of_sheets import OF_A_DRILL_FILE, OF_A_LIST, OF_A_SHEET

TOP = Path(__file__).resolve().parents[2]
Said = pytest.CaptureFixture[str]
EVERY = list(explanations().values())


def test_the_examples_that_come_along_are_those_of_the_cases() -> None:
    """Once stale: python -m tests.explaining.examples. That they are wrong, and right, is tested

    with the cases they are cut out of.
    """
    assert KEPT.read_text(encoding="utf-8") == as_kept()


def test_every_diagnostic_is_explained() -> None:
    codes = {code.slug for _, code in every_code()} | {rule.slug for rule in RULES}
    codes |= {rule.id for rule in AUDIT}
    assert {code.slug for code in declared()} <= codes
    source = "".join(path.read_text(encoding="utf-8") for path in (TOP / "engine").rglob("*.py"))
    assert len(codes) >= source.count(" = Code(\n") + len(AUDIT)
    assert set(explanations()) == codes


@pytest.mark.parametrize("found", EVERY, ids=[each.code for each in EVERY])
def test_each_has_a_wrong_and_a_right_example(found: Explained) -> None:
    assert found.title
    assert found.why
    assert found.wrong.strip()
    assert found.right.strip()
    assert found.wrong != found.right


@pytest.mark.parametrize(("slug", "example"), OF_A_SHEET.items())
def test_examples_of_sheets_are_judged_as_they_are_called(
    slug: str, example: tuple[str, str]
) -> None:
    wrong, right = ({each.code for each in problems(as_sheet(text))} for text in example)
    assert slug in wrong
    assert slug not in right


def as_sheet(text: str) -> File:
    """Return an example as a sheet: below a head, or in place of what that lies over."""
    head = sheet("one-line").text
    head = head[: head.index("choices:")]
    if text.startswith("over:"):
        lines = [text if line.startswith("over:") else line for line in head.splitlines()]
        return read_text("\n".join(lines) + "\n", "unit.yaml")
    return read_text(f"{head}{text}\n", "unit.yaml")


@pytest.mark.parametrize(("slug", "example"), OF_A_LIST.items())
def test_examples_of_lists_are_judged_as_they_are_called(
    tmp_path: Path, slug: str, example: tuple[str, str]
) -> None:
    def found(text: str) -> set[str]:
        if slug == "figure-refused":
            shelf = SHELF.replace("powers: [{power: 21, count: 1}]", text)
            (tmp_path / "shelf.yaml").write_text(shelf, encoding="utf-8")
            return {each.code for each in read_stock(tmp_path / "shelf.yaml").problems}
        (tmp_path / "list.csv").write_text(f"{text}\n", encoding="utf-8")
        return {each.code for each in read_list(tmp_path / "list.csv").problems}

    wrong, right = map(found, example)
    assert slug in wrong
    assert right == set()


def test_examples_of_drill_files_are_faults_that_are_planted_there() -> None:
    planted = {(code, right, wrong) for _, right, wrong, code in FAULTS}
    for slug in ("drill-name", "drill-tells", "drill-no-end"):
        wrong, right = OF_A_DRILL_FILE[slug]
        assert any(
            code == slug and (wrong == made or wrong in made or made in wrong)
            for code, _, made in planted
        ), slug
        assert right != wrong


@pytest.mark.parametrize("rule", RULES, ids=[rule.slug for rule in RULES])
def test_examples_of_wording_are_judged_as_they_are_called(rule: object) -> None:
    found = next(each for each in RULES if each is rule)
    assert list(found.find(found.wrong))
    assert not list(found.find(found.right))
    assert found.reads <= frozenset(TextKind)


@pytest.mark.parametrize("rule", AUDIT, ids=[rule.id for rule in AUDIT])
def test_examples_of_the_audit_lie_on_either_side_of_the_limit(rule: object) -> None:
    found = next(each for each in AUDIT if each is rule)
    wrong, right = (
        float(text.split()[0])
        for text in (explanations()[found.id].wrong, explanations()[found.id].right)
    )
    assert found.limit.judge(wrong) is not None
    assert found.limit.judge(right) is None


def test_one_is_told_with_both_examples(capsys: Said) -> None:
    assert run(["explain", "[Leads-Nowhere]"]) == Status.CLEAN
    said = capsys.readouterr().out
    assert said.startswith("leads-nowhere (check; error)")
    assert "wrong:" in said
    assert "right:" in said


def test_without_a_code_all_are_listed(capsys: Said) -> None:
    assert run(["explain"]) == Status.CLEAN
    assert len(capsys.readouterr().out.splitlines()) == len(EVERY) + 1
    assert run(["explain", "--format", "json"]) == Status.CLEAN
    assert len(json.loads(capsys.readouterr().out)) == len(EVERY)


def test_what_is_none_is_refused_with_the_nearest(capsys: Said) -> None:
    assert run(["explain", "leads-nowere"]) == Status.UNUSABLE
    assert "`leads-nowhere`" in capsys.readouterr().err
