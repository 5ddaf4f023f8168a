"""The paper for the meeting: lawful pages, both versions beside each other, marked in words."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from chamberwise.exports.comparing.content import ComparisonShown
from chamberwise.exports.comparing.difference import CLOSES, OPENS, marked
from chamberwise.exports.comparing.extract import comparison_shown
from chamberwise.exports.comparing.paper import comparison_pages
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sheet import Page, Weight
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status
from hypothesis import given
from hypothesis import strategies as st

from tests.engine.comparing.versions import FOLDER, PATHWAY, compared, old
from tests.exports.flow.stage import TODAY, assert_lawful, control, printed

EDITS = (
    ("inside: how-deep\n", "inside: closed\n"),
    ("Hydrate both edges of the wound.", "Hydrate both edges for 10 s."),
    ("needs: [suture]", "needs: [suture, cannula]"),
    ("Sweep the iris from", "Sweep the  iris from"),
)


@cache
def shown() -> ComparisonShown:
    return comparison_shown(compared(*EDITS), TODAY)


@cache
def pages(times: int = 1) -> tuple[Page, ...]:
    many = replace(shown(), changes=shown().changes * times)
    frame = Frame(Ruler(), control(old().library, PATHWAY), Sized(Paper.A4).format)
    return tuple(comparison_pages(frame, many))


def test_a_few_changes_fit_one_page() -> None:
    assert len(pages()) == 1
    assert_lawful(pages()[0], 9.2)


def test_many_go_on_over_the_page_and_none_is_left_out() -> None:
    assert len(pages(12)) > 1
    for page in pages(12):
        assert_lawful(page, 9.2)
    assert printed(pages(12)).count("A number or a unit changed") == 12


def test_every_grave_change_stands_there_and_editorial_ones_are_counted() -> None:
    said = printed(pages())
    assert "SAFETY At “Is iris in the wound?”, answer `inside`: way on" in said
    assert f"Hydrate both edges {OPENS}for 10 s.{CLOSES}" in said
    assert "PROCEDURAL At “Suture the main wound”: kit" in said
    assert "1 editorial." in said
    assert "Sweep the iris" not in said
    assert "RULE No eye is closed with iris in the wound" in said
    assert "Approver, another person:" in said


WORDS = st.lists(
    st.sampled_from(["fill", "the", "chamber", "with", "air", "or", "gas", "now"]), max_size=9
)


@given(WORDS, WORDS)
def test_without_the_marks_each_side_is_its_text(was: list[str], now: list[str]) -> None:
    for runs, words in zip(marked(" ".join(was), " ".join(now)), (was, now), strict=True):
        text = "".join(run.text for run in runs)
        assert text.replace(OPENS, "").replace(CLOSES, "") == " ".join(words)
        assert all((OPENS in run.text) == (run.weight is Weight.BOLD) for run in runs)
        assert bool(OPENS in text) <= (was != now)


def test_the_command_writes_it_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "paper.pdf"
    asked = ["compare", str(FOLDER / "pressing-lids.yaml"), "pressing-lids", "--paper", str(path)]
    asked += ["--library", str(FOLDER)]
    assert run(asked) == Status.CLEAN
    assert path.read_bytes().startswith(b"%PDF-")
    assert run(asked) == Status.UNUSABLE
    assert "is there already" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["paper.txt", "paper"])
def test_a_paper_of_another_form_is_refused(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    asked = ["compare", "pressing-lids", "pressing-lids", "--library", str(FOLDER)]
    assert run([*asked, "--paper", name]) == Status.UNUSABLE
    assert "does not end in .pdf" in capsys.readouterr().err


def test_a_paper_of_a_whole_library_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ["compare", str(FOLDER), str(FOLDER), "--paper", "paper.pdf"]
    assert run(asked) == Status.UNUSABLE
    assert "of one pathway" in capsys.readouterr().err
