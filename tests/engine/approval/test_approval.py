"""An approval is given to one content: it is written into a file, and any later edit ends it."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from chamberwise.engine.approval.recording import UnwritableError, with_approval
from chamberwise.engine.approval.sealing import seal_of
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.local.localising import localised
from chamberwise.engine.model.pathway import Status
from chamberwise.engine.reading.library import File, Loaded, assemble, load_library, read_text

from tests.engine.local.stage import BELOW, PATHWAY, TODAY, below, edited

ON = date(2026, 11, 28)
FILE = BELOW / "leaking-wound.yaml"


def library(text: str) -> Loaded:
    words = [each for each in below().files.values() if each.is_vocabulary]
    return assemble([*words, read_text(text, "leaking-wound.yaml")])


def approved(text: str, by: str = "Clinical lead") -> str:
    loaded = library(text)
    file = loaded.source(PATHWAY)
    return with_approval(text, file.tree, by, ON, seal_of(loaded.library, PATHWAY))


def told(loaded: Loaded) -> dict[str, str]:
    found = check_files(loaded, [loaded.file_of[PATHWAY]], TODAY)
    return {each.code: each.message for each in found}


def test_an_approval_is_read_back_and_nothing_else_has_changed() -> None:
    text = FILE.read_text()
    now = library(approved(text)).library.pathways[PATHWAY]
    was = library(text).library.pathways[PATHWAY]
    assert now.is_approved
    assert (now.approved_by, now.approved_on, now.status) == ("Clinical lead", ON, Status.APPROVED)
    assert now.steps == was.steps
    lines = approved(text).splitlines()
    assert [line for line in text.splitlines() if line not in lines] == ["status: draft"]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_line_ends_and_remarks_stay(end: str) -> None:
    text = FILE.read_text().replace("status: draft", "status: draft   # not yet").replace("\n", end)
    made = approved(text)
    assert f"status: approved   # not yet{end}approved by: Clinical lead{end}" in made
    assert made.replace(end, "").count("\n") == 0
    assert library(made).library.pathways[PATHWAY].is_approved


@pytest.mark.parametrize(
    "by", ["Dr A. Example, clinical lead", "Lead: cataract", "O'Neil #2", "No"]
)
def test_any_name_is_read_back_as_it_was_given(by: str) -> None:
    pathway = library(approved(FILE.read_text(), by)).library.pathways[PATHWAY]
    assert pathway.approved_by == by


def test_a_second_approval_takes_the_place_of_the_first() -> None:
    once = approved(FILE.read_text(), "First lead")
    edited_once = once.replace("Suture the main wound.", "Suture the whole wound.")
    twice = approved(edited_once, "Second lead")
    assert "First lead" not in twice
    assert twice.count("approved content:") == 1
    assert library(twice).library.pathways[PATHWAY].is_approved


@pytest.mark.parametrize(
    ("old", "new", "part"),
    [
        ("Suture the main wound.", "Suture the whole wound.", "`steps`"),
        ("edition: 2", "edition: 3", "`head`"),
        ("review by: 2027", "review by: 2028", "`head`"),
        ("title: Leaking wound at", "title: A leaking wound at", "`frame`"),
    ],
)
def test_any_later_edit_falls_back_to_a_draft_and_names_what_changed(
    old: str, new: str, part: str
) -> None:
    text = approved(FILE.read_text())
    assert "edited-since-approval" not in told(library(text))
    loaded = library(text.replace(old, new))
    assert not loaded.library.pathways[PATHWAY].is_approved
    assert loaded.library.pathways[PATHWAY].status is Status.DRAFT
    assert told(loaded)["edited-since-approval"].endswith(part)


def test_a_changed_word_of_the_house_ends_it_too(tmp_path: Path) -> None:
    text = approved(FILE.read_text())
    loaded = library(text)
    words = next(each for each in loaded.files.values() if "words" in each.shown_as)
    new = read_text(words.text.replace("title: Surgeon", "title: Operator"), words.shown_as)
    files = [new if each is words else each for each in loaded.files.values()]
    assert not assemble(files).library.pathways[PATHWAY].is_approved


def test_remarks_and_layout_do_not_end_it() -> None:
    text = approved(FILE.read_text())
    assert library(f"# a remark\n{text}\n\n").library.pathways[PATHWAY].is_approved


def test_an_approval_without_a_content_is_none() -> None:
    text = FILE.read_text().replace(
        "status: draft", "status: approved\napproved by: Lead\napproved on: 2026-11-25"
    )
    loaded = library(text)
    assert not loaded.library.pathways[PATHWAY].is_approved
    assert "which content" in told(loaded)["edited-since-approval"]


def test_nobody_approves_what_they_wrote() -> None:
    loaded = library(approved(FILE.read_text(), "education  LEAD"))
    assert not loaded.library.pathways[PATHWAY].is_approved
    assert "not-approved" in told(loaded)


def test_a_sheet_is_approved_with_all_it_lies_over() -> None:
    file = edited("everything", ("edition: 0.1", "edition: 1"))
    seal = seal_of(localised(below(), file).library, PATHWAY)
    text = with_approval(file.text, file.tree, "Clinical lead", ON, seal)
    assert _under(read_text(text, "everything.yaml")).library.pathways[PATHWAY].is_approved
    for old, new, part in (
        ("extension X1", "extension X9", "phones"),
        ("Write the time on the board.", "Write the hour on the board.", "steps"),
        ("chosen: fluid", "chosen: air", "words"),
    ):
        loaded = _under(read_text(text.replace(old, new), "everything.yaml"))
        assert not loaded.library.pathways[PATHWAY].is_approved
        assert part in loaded.fallen[PATHWAY]


def _under(file: File) -> Loaded:
    return localised(below(), file)


def test_a_file_on_one_line_is_left_alone() -> None:
    text = "{pathway: x, status: draft}"
    file = read_text(text, "x.yaml")
    seal = seal_of(load_library(BELOW).library, PATHWAY)
    with pytest.raises(UnwritableError):
        with_approval(text, file.tree, "Lead", ON, seal)


@pytest.mark.parametrize(("day", "told_of"), [("2026-11-25", True), ("2026-09-25", False)])
def test_a_review_is_told_sixty_days_before(day: str, told_of: bool) -> None:
    text = FILE.read_text().replace("review by: 2027-11-25", "review by: 2027-01-20")
    found = check_files(library(text), ["leaking-wound.yaml"], date.fromisoformat(day))
    assert ("review-soon" in {each.code for each in found}) is told_of
