"""Every diagnostic is explained, and its examples are what they are called."""

from __future__ import annotations

import json

import pytest
from chamberwise.engine.checks.declared import declared
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.exports.audit.rules.registry import RULES as AUDIT
from chamberwise.exports.explaining.content import Explained
from chamberwise.exports.explaining.extract import explanations
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.explaining.examples import KEPT, as_kept

Said = pytest.CaptureFixture[str]
EVERY = list(explanations().values())


def test_the_examples_that_come_along_are_those_of_the_cases() -> None:
    """Once stale: python -m tests.explaining.examples. That they are wrong, and right, is tested

    with the cases they are cut out of.
    """
    assert KEPT.read_text(encoding="utf-8") == as_kept()


def test_every_diagnostic_is_explained() -> None:
    codes = {each.slug for each in (*declared(), *RULES)} | {rule.id for rule in AUDIT}
    assert set(explanations()) == codes


@pytest.mark.parametrize("found", EVERY, ids=[each.code for each in EVERY])
def test_each_has_a_wrong_and_a_right_example(found: Explained) -> None:
    assert found.title
    assert found.why
    assert found.wrong.strip()
    assert found.right.strip()
    assert found.wrong != found.right


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
