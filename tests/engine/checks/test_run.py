"""Running the checks: what is shown of which file, and what stands in the way of a walk."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.checks.run import check_files, check_for_walk
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.reading.library import Loaded, assemble, read_text

from tests.support.build import TODAY
from tests.support.case_files import CASES, case_file

WORDS = (CASES / "beside" / "words.yaml").read_text(encoding="utf-8")
OTHER = (CASES / "beside" / "other-pathway.yaml").read_text(encoding="utf-8")
GOING_OVER = case_file(CASES / "handovers.yaml").put_right


def library(**texts: str) -> Loaded:
    return assemble(
        read_text(text, f"{name.replace('_', '-')}.yaml") for name, text in texts.items()
    )


def places(problems: list[Problem]) -> list[tuple[str, str]]:
    return [(problem.file, problem.code) for problem in problems]


def test_a_fault_over_there_is_shown_with_the_pathway_that_leads_there() -> None:
    broken = OTHER.replace("go to: done", "go to: gone")
    whole = library(words=WORDS, other_pathway=broken, handovers=GOING_OVER)
    assert places(check_files(whole, ["handovers.yaml"], TODAY)) == [
        ("other-pathway.yaml", "leads-nowhere")
    ]
    assert places(check_for_walk(whole, "handovers", TODAY)) == [
        ("other-pathway.yaml", "leads-nowhere")
    ]


def test_a_fault_is_told_once_where_several_files_are_shown() -> None:
    broken = OTHER.replace("go to: done", "go to: gone")
    whole = library(words=WORDS, other_pathway=broken, handovers=GOING_OVER)
    found = check_files(whole, ["handovers.yaml", "other-pathway.yaml"], TODAY)
    assert len(found) == len(set(found))
    assert places(found).count(("other-pathway.yaml", "leads-nowhere")) == 1


def test_a_fault_in_the_shared_words_stands_in_the_way_of_every_walk() -> None:
    broken = WORDS.replace("makes stale: [wound]", "makes stale: [wond]")
    whole = library(words=broken, other_pathway=OTHER, handovers=GOING_OVER)
    for name in ("handovers", "other-pathway"):
        assert places(check_for_walk(whole, name, TODAY)) == [("words.yaml", "not-defined")]
    assert ("words.yaml", "not-defined") in places(check_files(whole, ["handovers.yaml"], TODAY))


def test_only_errors_of_form_and_names_stand_in_the_way() -> None:
    whole = library(words=WORDS, other_pathway=OTHER, safety=(CASES / "safety.yaml").read_text())
    assert check_for_walk(whole, "safety", TODAY) == []
    assert check_for_walk(whole, "safety", date(2099, 1, 1)) == []
    assert check_files(whole, ["safety.yaml"], TODAY) != []


def test_problems_come_by_file_and_line() -> None:
    whole = library(words=WORDS, names=(CASES / "names.yaml").read_text())
    found = check_files(whole, ["names.yaml", "words.yaml"], TODAY)
    spans = [(each.file, each.span.line if each.span else 0) for each in found]
    assert spans == sorted(spans)


def test_a_vocabulary_file_is_checked_for_words_nobody_uses() -> None:
    whole = library(words=WORDS, other_pathway=OTHER)
    found = check_files(whole, ["words.yaml"], TODAY)
    assert {each.code for each in found} == {"never-used"}
    assert all(each.severity is Severity.WARNING for each in found)
    assert "`suture`" in " ".join(each.message for each in found)


def test_some_faults_can_never_be_accepted() -> None:
    text = (
        (CASES / "no-way-out.yaml")
        .read_text()
        .replace(
            "steps:\n",
            "accepted:\n  - {check: no-way-out, at: steps / press, reason: We know.}\nsteps:\n",
        )
    )
    found = check_files(library(words=WORDS, no_way_out=text), ["no-way-out.yaml"], TODAY)
    assert [each.code for each in found].count("no-way-out") == 1
    assert [each.message for each in found if each.code == "unused-acceptance"] == [
        "`no-way-out` can never be accepted"
    ]


def test_checking_twice_says_the_same() -> None:
    texts = {"words": WORDS, "arrows": (CASES / "arrows.yaml").read_text()}
    once = check_files(library(**texts), ["arrows.yaml"], TODAY)
    assert once == check_files(library(**texts), ["arrows.yaml"], TODAY)
