"""Beside an editor: problems, steps, rules and the chart of a file, anew at every save."""

from __future__ import annotations

import shutil
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import timedelta
from pathlib import Path

import pytest
from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import load_library, read_file
from chamberwise.exports.proof.content import VerdictWord
from chamberwise.tui.app import WalkProgram
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status
from chamberwise.tui.drafting import draft_of, draft_of_sheet
from chamberwise.tui.examining import Examined
from chamberwise.tui.present.draft import Stage
from chamberwise.tui.screens.draft import DraftScreen
from chamberwise.tui.setting import Setting
from textual.pilot import Pilot

from tests.engine.local.stage import BELOW, SHEETS
from tests.tui.golden import assert_as_kept
from tests.tui.screens.playing import NOWHERE, playing, press, seen
from tests.tui.stage import Ticking

KEPT = Path(__file__).parent / "kept"
LIBRARY = Path(__file__).resolve().parents[2] / "library"
NAME = "shallow-chamber.yaml"
MOST_LOOKS = 500


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    shutil.copytree(LIBRARY, tmp_path / "library")
    monkeypatch.chdir(tmp_path / "library")
    return tmp_path / "library"


@asynccontextmanager
async def beside(
    folder: Path, size: tuple[int, int] = (80, 24), *, colour: bool = True
) -> AsyncIterator[Pilot[int]]:
    """Open the screen at the file and wait until all is found."""
    setting = Setting(load_library(folder), Ticking(timedelta(0)), NOWHERE, colour)
    program = WalkProgram(setting, draft=draft_of(setting.loaded, NAME))
    async with program.run_test(size=size) as pilot:
        await until(pilot, "proof: every rule holds")
        yield pilot


async def until(pilot: Pilot[int], text: str) -> str:
    for _ in range(MOST_LOOKS):
        await pilot.pause(0.02)
        if text in (shown := seen(pilot)):
            return shown
    raise AssertionError(f"{text!r} never came:\n{seen(pilot)}")


def edit(folder: Path, was: str, now: str) -> None:
    path = folder / NAME
    text = path.read_text(encoding="utf-8")
    assert text.count(was) == 1
    path.write_text(text.replace(was, now), encoding="utf-8")


async def test_the_screen_looks_so(folder: Path) -> None:
    async with beside(folder) as pilot:
        assert_as_kept(KEPT / "draft-problems-80x24.txt", seen(pilot))
        steps = await press(pilot, "2", "down", "down")
        assert_as_kept(KEPT / "draft-steps-80x24.txt", steps)
    async with beside(folder, (60, 20), colour=False) as pilot:
        assert_as_kept(KEPT / "draft-steps-60x20.txt", await press(pilot, "2", "down"))


async def test_a_save_shows_what_went_wrong_and_what_was_put_right(folder: Path) -> None:
    async with beside(folder) as pilot:
        edit(folder, "tight: to-pressing-lids\n", "tight: fil\n")
        text = await until(pilot, "1 error")
        assert "`fil`" in text
        assert "Around this step" in await press(pilot, "pagedown")
        edit(folder, "tight: fil\n", "tight: to-pressing-lids\n")
        await until(pilot, "proof: every rule holds")


async def test_what_cannot_be_read_is_told_and_the_screen_goes_on(folder: Path) -> None:
    whole = (folder / NAME).read_bytes()
    async with beside(folder) as pilot:
        (folder / NAME).write_bytes(b"\xff\xfe\x00")
        await until(pilot, "1 error")
        assert "No step could be read." in await press(pilot, "2")
        assert "There is no chart" in await press(pilot, "4")
        (folder / NAME).unlink()
        await press(pilot, "1")
        await until(pilot, "cannot be opened")
        (folder / NAME).write_bytes(whole)
        await until(pilot, "proof: every rule holds")


async def test_the_step_chosen_stays_chosen_over_a_save(folder: Path) -> None:
    async with beside(folder) as pilot:
        await press(pilot, "2", "down", "down")
        assert isinstance(pilot.app.screen, DraftScreen)
        chosen = pilot.app.screen.chosen[pilot.app.screen.view]
        assert chosen
        edit(folder, "phases:\n  hold", "# A remark.\n\nphases:\n  hold")
        await pilot.pause(0.5)
        await until(pilot, "proof: every rule holds")
        marked = [line for line in seen(pilot).splitlines() if line.startswith(" >")]
        assert marked[0].split()[2] == chosen


async def test_a_word_that_others_share_is_read_again_too(folder: Path) -> None:
    words = folder / "vocabulary" / "words.yaml"
    async with beside(folder) as pilot:
        text = words.read_text(encoding="utf-8")
        words.write_text(text.replace("  fill-chamber:", "  fill-it:"), encoding="utf-8")
        await until(pilot, "error")
        words.write_text(text, encoding="utf-8")
        await until(pilot, "proof: every rule holds")


async def test_no_verdict_of_the_save_before_is_shown_as_current(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown: list[tuple[Stage, frozenset[str] | None]] = []
    show = DraftScreen.show

    def noted(screen: DraftScreen, found: Examined, stage: Stage) -> None:
        words = frozenset(rule.verdict for rule in found.proof.rules) if found.proof else None
        shown.append((stage, words))
        show(screen, found, stage)

    monkeypatch.setattr(DraftScreen, "show", noted)
    async with beside(folder) as pilot:
        shown.clear()
        edit(folder, "    makes known: {depth: deep}\n", "")
        await until(pilot, "proof: 1 rule broken")
    assert shown[0] == (Stage.SEEN, None)
    assert shown[1] == (Stage.CHECKED, None)
    assert shown[2] == (Stage.CHECKED, frozenset({VerdictWord.BEING_PROVED}))
    assert VerdictWord.BROKEN in (shown[-1][1] or ())


async def test_a_sheet_is_shown_laid_over_its_pathway(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copytree(BELOW, tmp_path / "below")
    sheet = tmp_path / "everything.yaml"
    shutil.copy(SHEETS[0].parent / sheet.name, sheet)
    base, read = load_library(tmp_path / "below"), read_file(sheet)
    draft = draft_of_sheet(localised(base, read), base, read)
    setting = Setting(base, Ticking(timedelta(0)), NOWHERE, colour=True)
    program = WalkProgram(setting, draft=draft)
    async with program.run_test(size=(80, 24)) as pilot:
        await until(pilot, "proof: every rule holds")
        assert "Around this step" in await press(pilot, "2")
        text = sheet.read_text(encoding="utf-8")
        sheet.write_text(text.replace("over:", "ovr:", 1), encoding="utf-8")
        await until(pilot, "The sheet cannot be laid over its pathway yet")
        sheet.write_text(text, encoding="utf-8")
        await until(pilot, "proof: every rule holds")
        below = tmp_path / "below" / "leaking-wound.yaml"
        below.write_text(
            below.read_text(encoding="utf-8").replace("start: ", "start: not-", 1), encoding="utf-8"
        )
        await until(pilot, "error")


async def test_every_view_has_its_number_and_tab_goes_round(folder: Path) -> None:
    async with beside(folder) as pilot:
        for number, view in enumerate(("steps", "rules", "chart", "problems"), 2):
            assert (await press(pilot, "tab")).startswith(f" {(number - 1) % 4 + 1}: {view}, ")
        assert "holds" in await press(pilot, "3")


async def test_the_library_opens_it_and_escape_goes_back() -> None:
    async with playing((80, 24), None) as pilot:
        await pilot.press("e")
        screen = pilot.app.screen
        assert isinstance(screen, DraftScreen)
        assert Path(screen.draft.shown_as).name in screen.title_line.ends[0]
        assert "/" not in screen.title_line.ends[0]
        assert "Chamberwise: pathways" in await press(pilot, "escape")


def test_without_a_screen_the_other_way_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["write", "shallow-chamber", "--library", str(LIBRARY)]) == Status.UNUSABLE
    assert "check shallow-chamber --watch" in capsys.readouterr().err
