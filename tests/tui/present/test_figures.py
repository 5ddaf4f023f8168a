"""Where a step refers to a calculation: the command, and the figures of a case of the brief."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from chamberwise.engine.reading.library import load_library
from chamberwise.engine.walk.walk import set_out
from chamberwise.engine.working.registry import calculation
from chamberwise.engine.working.run import worked
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status
from chamberwise.tui.present.figures import CaseGiven
from chamberwise.tui.present.parts import laid_out
from chamberwise.tui.present.step_page import body
from chamberwise.tui.present.step_view import StepView, step_view

from tests.tui.stage import Ticking

PATHWAY = """pathway: worked
title: A step with a calculation
summary: One action, at which a lens power is worked.
edition: 0.1
status: draft
authors: [Tester]
reviewed: 2026-11-25
review by: 2027-11-25
start: choose
phases: {lens: Lens}
duties: {surgeon: {title: Surgeon}}
steps:
  choose:
    phase: lens
    do: [{who: surgeon, does: Say the power aloud.}]
    work: [srk-t, infusion-pressure]
    go to: done
  done:
    phase: lens
    outcome: Done
"""
EYE = {
    "axial-length": "23.5 mm",
    "keratometry": "7.7 mm",
    "a-constant": "118.7",
    "target": "-0.25",
    "weight": "70 kg",
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "worked.yaml").write_text(PATHWAY, encoding="utf-8")
    return tmp_path


def view(folder: Path, case: CaseGiven | None) -> StepView:
    loaded = load_library(folder)
    walk = set_out(loaded.library, "worked", "0123456789abcdef", Ticking()())
    return step_view(walk, date(2026, 11, 29), case=case)


def told(of: StepView) -> str:
    rows = [row.plain.replace("\u00a0", " ") for row in laid_out(body(of), 76)]
    return " ".join(" ".join(rows).split())


def test_no_line_end_parts_a_figure_from_its_unit(folder: Path) -> None:
    for width in range(30, 77):
        rows = laid_out(body(view(folder, CaseGiven("A", EYE))), width)
        assert not [row for row in rows if row.plain.lstrip().startswith("D leaves")]
        assert not [row for row in rows if row.plain.lstrip() in ("D", "D;", "D.")]


def test_without_a_brief_the_command_is_told(folder: Path) -> None:
    found = view(folder, None)
    assert [each.command for each in found.figures] == [
        "chamberwise work srk-t",
        "chamberwise work infusion-pressure",
    ]
    assert "Work: Lens power by SRK/T (chamberwise work srk-t)" in told(found)


def test_with_a_case_the_figures_are_those_of_the_calculation(folder: Path) -> None:
    srk_t, height = view(folder, CaseGiven("A", EYE)).figures
    typed = {name: text for name, text in EYE.items() if name != "weight"}
    expected = worked(calculation("srk-t"), typed)
    assert srk_t.figures == tuple(f"{each.title}: {each.shown}" for each in expected.results)
    assert height.figures == ("`height` is missing",)
    assert "case A: exact power for the bag: 20.94 D" in told(view(folder, CaseGiven("A", EYE)))


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--case", "A"], "go together"),
        (["--brief", "list.csv", "--case", "Z"], "has no case `Z`. It has `A`."),
    ],
)
def test_a_case_that_is_not_there(
    folder: Path,
    words: list[str],
    said: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(folder)
    (folder / "list.csv").write_text("case,K\nA,43.5\n", encoding="utf-8")
    library = ["--library", str(folder)]
    assert run(["walk", "worked", "--plain", *library, *words]) == Status.UNUSABLE
    assert said in capsys.readouterr().err
