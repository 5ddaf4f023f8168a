"""Printing from the library: by number, into the folder the program was started in."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.store.register_file import read
from chamberwise.exports.printing import kinds
from chamberwise.exports.printing.order import Kind
from chamberwise.tui.actions import SHEETS
from chamberwise.tui.screens.sheets import KINDS
from textual.pilot import Pilot

from tests.exports.printing.rooms import use_test_rooms
from tests.tui.screens.playing import playing, press, seen

NOWHERE = kinds.Room("chamberwise.exports.nowhere", "nothing")
NAME = "restless-patient"


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    use_test_rooms(monkeypatch)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    folder = tmp_path / "here"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


async def printed(pilot: Pilot[int], *keys: str) -> str:
    """Press keys, wait for the sheet, and return the screen in one line."""
    await press(pilot, *keys)
    await pilot.app.workers.wait_for_complete()
    await pilot.pause()
    return " ".join(seen(pilot).split())


def test_there_is_a_number_for_every_choice() -> None:
    (choose,) = [action for action in SHEETS if action.name == "choose"]
    assert len(choose.keys) == len(KINDS)


async def test_a_wall_chart_on_the_paper_chosen(here: Path, tmp_path: Path) -> None:
    async with playing((80, 24), None) as pilot:
        assert "1  Wall chart" in await press(pilot, "down", "o")
        asked = await press(pilot, "1")
        assert "3  A2" in asked
        assert "1-4 choose" in asked
        said = await printed(pilot, "3")
        assert "Written: " in said
        assert "Stamp of the wall chart: " in said
        assert "1 Wall chart" in said
        assert "> Restless patient" in await press(pilot, "escape")
    assert [path.name for path in here.iterdir()] == [f"{NAME}-wall-chart-A2.pdf"]
    (copy,) = read(tmp_path / "home" / "register.json").copies
    assert (copy.sheet, copy.paper) == ("wall-chart", "A2 portrait")


async def test_what_comes_on_one_paper_only_is_printed_at_once(here: Path) -> None:
    async with playing((80, 24), None) as pilot:
        number = 1 + list(KINDS).index(Kind.SCRIPT.value)
        assert "Written: " in await printed(pilot, "down", "o", str(number))
    assert [path.name for path in here.iterdir()] == [f"{NAME}-script-A4.pdf"]


async def test_a_number_beside_nothing_does_nothing(here: Path) -> None:
    async with playing((80, 24), None) as pilot:
        asked = await press(pilot, "down", "o", "1")
        assert await press(pilot, "7") == asked
    assert list(here.iterdir()) == []


async def test_why_nothing_was_printed_is_told(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (here / f"{NAME}-wall-chart-A3.pdf").write_text("a stranger's")
    async with playing((80, 24), None) as pilot:
        assert "none of our sheets" in await printed(pilot, "down", "o", "1", "2")
        monkeypatch.setattr(kinds, "ROOMS", dict.fromkeys(Kind, NOWHERE))
        assert "makes no wall chart in that form yet" in await printed(pilot, "1", "1")


async def test_a_pathway_with_an_error_stays_off_paper(here: Path) -> None:
    async with playing((80, 24), None) as pilot:
        said = await printed(pilot, "o", "1", "2")
        assert "error: a walk can do" in said
    assert list(here.iterdir()) == []
