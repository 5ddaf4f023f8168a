"""A unit is chosen from the library by its sheet; from then on everything is as the unit has it."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.store.register_file import read
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.engine.local.stage import HERE, below
from tests.exports.printing.rooms import use_test_rooms
from tests.tui.screens.playing import playing, press, seen


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a folder with a good sheet, a stale one, one that cannot be read, and no sheet."""
    for name in ("everything", "stale-text"):
        text = (HERE / "sheets" / f"{name}.yaml").read_text(encoding="utf-8")
        (tmp_path / f"{name}.yaml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    (tmp_path / "torn.yaml").write_text("local sheet: [\n", encoding="utf-8")
    (tmp_path / "list.yaml").write_text("pathway: x\n# local sheet: no\n", encoding="utf-8")
    return tmp_path


async def test_the_library_is_shown_as_the_unit_has_it(folder: Path) -> None:
    async with playing(pathway=None, library=below(), sheets=(folder,)) as pilot:
        assert "Chamberwise: pathways" in seen(pilot)
        chosen = await press(pilot, "u", "down")
        assert "> Harbour Eye Unit" in chosen
        assert "everything.yaml: edition 0.1, draft, over leaking-wound" in " ".join(chosen.split())
        shown = await press(pilot, "enter")
        assert shown.splitlines()[0].startswith(" Pathways of Harbour Eye Unit")
        assert "everything.yaml" in shown.splitlines()[0]
        assert "DRAFT, edition 0.1 over edition 2, approved by nobody" in shown
        walk = await press(pilot, "enter")
        assert "extension X1" in walk


async def test_the_unit_is_marked_and_can_be_given_up_again(folder: Path) -> None:
    async with playing(pathway=None, library=below(), sheets=(folder,)) as pilot:
        await press(pilot, "u", "down", "enter")
        assert "> Harbour Eye Unit" in await press(pilot, "u")
        assert "Pathways of Harbour Eye Unit" in await press(pilot, "escape")
        shown = await press(pilot, "u", "up", "enter")
        assert "Chamberwise: pathways" in shown
        assert "over edition" not in shown


async def test_a_sheet_that_does_not_fit_says_why_and_changes_nothing(folder: Path) -> None:
    async with playing(pathway=None, library=below(), sheets=(folder,)) as pilot:
        told = " ".join((await press(pilot, "u", "down", "down", "enter")).split())
        assert "Not carried out" in told
        assert "stale-text.yaml:" in told
        assert "stands there now" in told
        assert "Chamberwise: pathways" in await press(pilot, "escape")


async def test_a_sheet_that_cannot_be_read_is_listed_and_told(folder: Path) -> None:
    async with playing(pathway=None, library=below(), sheets=(folder,)) as pilot:
        assert "A sheet that cannot be read" in await press(pilot, "u")
        told = " ".join((await press(pilot, "down", "down", "down", "enter")).split())
        assert "Not carried out" in told
        assert "`chamberwise check" in told


async def test_where_no_sheet_lies_it_says_how_to_write_one(tmp_path: Path) -> None:
    async with playing(pathway=None, library=below(), sheets=(tmp_path,)) as pilot:
        shown = " ".join((await press(pilot, "u")).split())
        assert "No local sheet was found. `chamberwise new NAME --over ID --unit UNIT`" in shown
        assert "Chamberwise: pathways" in await press(pilot, "enter")


def test_line_by_line_the_sheets_of_a_folder_are_listed(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["list", "--sheets", str(folder), "--library", str(HERE / "library")]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[0].rpartition("/")[2] for line in lines[1:]] == [
        "everything.yaml",
        "stale-text.yaml",
        "torn.yaml",
    ]
    assert "Harbour Eye Unit" in lines[1]
    assert run(["list", "--sheets", str(folder / "nowhere")]) == Status.UNUSABLE
    assert "Name one that holds local sheets" in capsys.readouterr().err


def test_a_sheet_called_approved_that_is_not_what_was_approved_is_a_draft(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = folder / "everything.yaml"
    text = path.read_text(encoding="utf-8").replace("status: draft", "status: approved")
    path.write_text(text, encoding="utf-8")
    run(["list", "--sheets", str(folder), "--library", str(HERE / "library")])
    assert capsys.readouterr().out.splitlines()[1].endswith("draft")


@pytest.mark.parametrize("typed", [["--sheets", "nowhere"], ["--local", "nowhere.yaml"]])
def test_what_the_program_cannot_open_at_is_told(
    typed: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("chamberwise.tui.command.program.carries_screen", lambda: True)
    assert run(typed) == Status.UNUSABLE
    assert "nowhere" in capsys.readouterr().err


async def test_what_the_unit_prints_names_it_and_is_asked_after_by_its_sheet(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    use_test_rooms(monkeypatch)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(folder / "home"))
    async with playing(pathway=None, library=below(), sheets=(folder,)) as pilot:
        await press(pilot, "u", "down", "enter", "o", "2")
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        assert "Written:" in seen(pilot)
    (copy,) = read(folder / "home" / "register.json").copies
    assert copy.source == str(folder / "everything.yaml")
    assert run(["stamp", copy.code, "--library", str(HERE / "library")]) == Status.CLEAN


async def test_beside_a_unit_s_sheet_it_says_how_the_sheet_is_written(folder: Path) -> None:
    async with playing(pathway=None, library=below(), sheets=(folder,)) as pilot:
        told = " ".join((await press(pilot, "u", "down", "enter", "e")).split())
        assert "`chamberwise check everything.yaml --watch`" in told
