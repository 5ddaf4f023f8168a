from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.tui.screens.walk import WalkScreen

from tests.tui.screens.playing import playing, press


async def test_the_record_opens_at_the_end_and_is_saved(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path))
    async with playing() as pilot:
        await press(pilot, "1", "1")
        assert "DRAFT  Record" in await press(pilot, "enter")
        assert "The record is saved as" in " ".join((await press(pilot, "s")).split())
    (saved,) = (tmp_path / "records").iterdir()
    assert "OUTCOME: Wound closed, chamber deep" in saved.read_text(encoding="utf-8")


async def test_a_record_that_cannot_be_saved_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    blocked = tmp_path / "blocked"
    blocked.write_text("")
    monkeypatch.setenv("CHAMBERWISE_HOME", str(blocked))
    async with playing() as pilot:
        assert "could not be written" in " ".join((await press(pilot, "3", "c", "s")).split())


async def test_a_file_that_is_there_is_never_written_over(tmp_path: Path) -> None:
    taken = tmp_path / "walk.txt"
    taken.write_text("kept")
    async with playing() as pilot:
        walk = next(each for each in pilot.app.screen_stack if isinstance(each, WalkScreen))
        walk.record_to = str(taken)
        asked = await press(pilot, "3", "c", "s")
        assert "Save under another name" in " ".join(asked.split())
        assert "walk-2.txt" in " ".join((await press(pilot, "enter")).split())
        await press(pilot, "s", "escape")
    assert taken.read_text(encoding="utf-8") == "kept"
    assert "Answered: Fast" in (tmp_path / "walk-2.txt").read_text(encoding="utf-8")
    assert len(list(tmp_path.iterdir())) == 2


async def test_a_note_like_a_patient_is_kept_only_once_confirmed() -> None:
    async with playing() as pilot:
        asked = await press(pilot, "n", *"123456", "enter")
        assert "looks like a patient" in asked
        assert "! Noted: 123456" in await press(pilot, "enter")
        again = await press(pilot, "n", *"123456", "enter", "7", "enter")
        assert "looks like a patient" in again
        assert "! Noted: 123456\n" in await press(pilot, "escape")
