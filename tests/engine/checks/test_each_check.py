"""Every check finds its fault, there and nowhere else, and is content once it is put right."""

from __future__ import annotations

from functools import partial
from pathlib import Path

import pytest
from chamberwise.engine.checks import run
from chamberwise.engine.checks.declared import declared
from chamberwise.engine.checks.knowledge import at_sight
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.proof.sighting import sighted
from chamberwise.engine.reading import source_text, tree
from chamberwise.engine.reading.library import assemble, read_file, read_text

from tests.support.build import TODAY
from tests.support.case_files import CASES, CaseFile, case_file, problems_of

FILES = [case_file(path) for path in sorted(CASES.glob("*.yaml"))]
CLEAN = FILES[0].put_right

NO_TEXT = {
    "empty-file": b"# nothing but a remark\n",
    "not-text": b"title: caf\xe9\n",
    "hidden-character": "title: Case\u202e file\n".encode(),
    "merge-conflict": b"<<<<<<< ours\ntitle: One\n=======\ntitle: Two\n>>>>>>> theirs\n",
}
ELSEWHERE = {
    *("unreadable-file", "too-large", "too-many-problems", "too-many-states"),
    "decided-ahead",
}
"""Each has a test of its own below, or among those of local sheets."""

every_file = pytest.mark.parametrize("case", FILES, ids=[case.name for case in FILES])


@every_file
def test_every_fault_is_found_where_it_stands(case: CaseFile) -> None:
    found = problems_of(case, case.text)
    expected = case.expected
    assert [each for each in expected if not any(map(each.is_met_by, found))] == []
    assert [each for each in found if not any(one.is_met_by(each) for one in expected)] == []
    assert len(found) == len(expected)


@every_file
def test_put_right_the_file_is_clean(case: CaseFile) -> None:
    assert problems_of(case, case.put_right) == []


@pytest.mark.parametrize("slug", NO_TEXT)
def test_what_is_no_text_of_a_pathway(slug: str, tmp_path: Path) -> None:
    path = tmp_path / "file.yaml"
    path.write_bytes(NO_TEXT[slug])
    assert slug in {problem.code for problem in read_file(path).problems}
    path.write_text(CLEAN, encoding="utf-8")
    assert read_file(path).problems == []


def test_unreadable_file(tmp_path: Path) -> None:
    for path in (tmp_path, tmp_path / "not-there.yaml"):
        assert [each.code for each in read_file(path).problems] == ["unreadable-file"]


def test_too_large(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "file.yaml"
    path.write_text(CLEAN, encoding="utf-8")
    monkeypatch.setattr(source_text, "LARGEST", len(CLEAN) - 1)
    assert [each.code for each in read_file(path).problems] == ["too-large"]
    monkeypatch.setattr(source_text, "LARGEST", len(CLEAN))
    assert read_file(path).problems == []


def test_too_many_problems() -> None:
    many = CLEAN + "".join(f"odd-{number}: 1\n" for number in range(tree.MOST_PROBLEMS + 5))
    found = read_text(many, "file.yaml").problems
    assert found[-1].code == "too-many-problems"
    assert len(found) == tree.MOST_PROBLEMS + 1


def test_too_many_states(monkeypatch: pytest.MonkeyPatch) -> None:
    case = next(each for each in FILES if each.name == "branches.yaml")
    assert "too-many-states" not in {each.code for each in problems_of(case, case.text)}
    monkeypatch.setattr(at_sight, "seen_from", partial(sighted, most=2))
    found = [each for each in problems_of(case, case.text) if each.code == "too-many-states"]
    assert [each.message for each in found] == ["stopped after 3 states"]


def test_every_problem_says_why_and_what_to_do() -> None:
    for case in FILES:
        for problem in problems_of(case, case.text):
            assert problem.why.endswith(".")
            assert problem.message
            assert problem.advice
            assert problem.span is not None


def test_every_check_has_a_case() -> None:
    shown = {each.code for case in FILES for each in case.expected} | NO_TEXT.keys() | ELSEWHERE
    worded = {rule.slug for rule in RULES}
    assert {code.slug for code in declared()} - shown - worded == set()


def test_slugs_are_declared_once() -> None:
    slugs = [*(code.slug for code in declared()), *(rule.slug for rule in RULES)]
    assert len(set(slugs)) == len(slugs)


def test_a_word_in_the_vocabulary_that_nobody_defined_stops_nothing_else() -> None:
    words = (CASES / "beside" / "words.yaml").read_text(encoding="utf-8")
    broken = words.replace("makes stale: [wound]", "makes stale: [wond]")
    case = next(each for each in FILES if each.name == "branches.yaml")
    files = [read_text(broken, "words.yaml"), read_text(case.put_right, "branches.yaml")]
    found = run.check_files(assemble(files), ["branches.yaml"], TODAY)
    assert ("words.yaml", "not-defined") in {(each.file, each.code) for each in found}
