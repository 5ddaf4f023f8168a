from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from chamberwise.exports.record.standing import STANDING
from chamberwise.tui import actions
from chamberwise.tui import footer as footers
from chamberwise.tui.actions import KeyAction
from chamberwise.tui.screens.calculations import CalculationsScreen
from chamberwise.tui.screens.checker import CheckerScreen
from chamberwise.tui.screens.drill import DrillScreen
from chamberwise.tui.screens.form import FormScreen
from chamberwise.tui.screens.library import LibraryScreen
from chamberwise.tui.screens.map import MapScreen
from chamberwise.tui.screens.name import NameScreen
from chamberwise.tui.screens.note import NoteScreen
from chamberwise.tui.screens.offer import OfferScreen
from chamberwise.tui.screens.panel import Panel
from chamberwise.tui.screens.record import RecordScreen
from chamberwise.tui.screens.sheets import SheetsScreen
from chamberwise.tui.screens.team_drill import TeamDrillScreen
from chamberwise.tui.screens.units import UnitsScreen
from chamberwise.tui.screens.walk import WalkScreen
from textual.binding import Binding
from textual.pilot import Pilot
from textual.screen import Screen

from tests.tui.screens.playing import playing, press, seen
from tests.tui.stage import sitting

TABLES: list[tuple[type[Screen[object]], tuple[KeyAction, ...]]] = [
    (WalkScreen, actions.WALK),
    (LibraryScreen, actions.LIBRARY),
    (CheckerScreen, actions.CHECKER),
    (SheetsScreen, actions.SHEETS),
    (UnitsScreen, actions.UNITS),
    (DrillScreen, actions.DRILL),
    (TeamDrillScreen, actions.TEAM),
    (CalculationsScreen, actions.CALCULATIONS),
    (FormScreen, actions.FORM),
    (OfferScreen, actions.OFFER),
    (Panel, actions.PANEL),
    (MapScreen, actions.MAP),
    (RecordScreen, actions.RECORD),
    (NoteScreen, actions.NOTE),
    (NameScreen, actions.NAME),
]


def step(pilot: Pilot[int]) -> int:
    screen = next(each for each in pilot.app.screen_stack if isinstance(each, WalkScreen))
    return len(screen.sitting.walk.legs) + 1


@pytest.mark.parametrize(("screen", "table"), TABLES)
def test_bindings_footer_and_help_agree(
    screen: type[Screen[object]], table: tuple[KeyAction, ...]
) -> None:
    bound = {each.key for each in screen.BINDINGS if isinstance(each, Binding)}
    assert bound == {key for action in table for key in action.keys}
    assert len({key for action in table for key in action.keys}) == sum(
        len(action.keys) for action in table
    )
    for action in table:
        owner = "WalkProgram" if action in actions.OF_THE_PROGRAM else screen.__name__
        from chamberwise.tui.app import WalkProgram

        doer = WalkProgram if owner == "WalkProgram" else screen
        assert hasattr(doer, f"action_{action.name}"), (owner, action.name)
        assert any(action.help in part.text for part in footers.help_parts(table))
        assert (f"{action.shown} {action.word}" in footers.footer(table, width=500)) == (
            action.in_footer
        )


async def test_number_keys_answer_and_enter_does() -> None:
    async with playing() as pilot:
        assert "DO  Hold still and fill the chamber" in await press(pilot, "3")
        assert "ASK  Is the patient comfortable?" in await press(pilot, "enter")
        assert "HAND OVER  Over to: Restless patient" in await press(pilot, "3")


async def test_a_key_that_fits_nothing_says_what_does_and_moves_nothing() -> None:
    async with playing() as pilot:
        assert "! Press 1 to 4 to answer." in await press(pilot, "9")
        assert "! Press 1 to 4 to answer." in await press(pilot, "enter")
        assert step(pilot) == 1
        await press(pilot, "3")
        assert "! Press Enter when it is done." in await press(pilot, "1")
        assert step(pilot) == 2


async def test_undo_and_redo() -> None:
    async with playing() as pilot:
        await press(pilot, "3", "enter")
        assert "Hold still" in await press(pilot, "u")
        assert "Is the patient comfortable?" in await press(pilot, "y")
        assert "Does the main wound leak?" in await press(pilot, "u", "u")
        assert "nothing to take back" in await press(pilot, "u")
        assert "Hold still" in await press(pilot, "ctrl+r")
        await press(pilot, "y")
        assert "Nothing was taken back." in await press(pilot, "y")


async def test_a_key_that_bounces_skips_no_step() -> None:
    async with playing(tick=timedelta(milliseconds=20)) as pilot:
        await press(pilot, "3", "enter", "enter", "1", "enter")
        assert step(pilot) == 5
    async with playing(tick=timedelta(milliseconds=20), pathway="restless-patient") as pilot:
        await press(pilot, "enter", "2", "2")
        assert step(pilot) == 3


async def test_a_click_answers() -> None:
    async with playing() as pilot:
        rows = seen(pilot).split("\n")
        row = next(at for at, line in enumerate(rows) if "3  Fast" in line)
        await pilot.click(offset=(10, row))
        await pilot.pause()
        assert "Hold still" in seen(pilot)


@pytest.mark.parametrize("size", [(60, 20), (120, 40)])
async def test_every_page_says_what_it_is_for_and_leads_back(size: tuple[int, int]) -> None:
    async with playing(size) as pilot:
        before = await press(pilot, "3")
        for key in ("w", "k", "m", "c", "question_mark", "n"):
            opened = await press(pilot, key)
            assert STANDING in " ".join(opened.split())
            assert opened.startswith(" DRAFT") or key == "question_mark"
            after = await press(pilot, "escape")
            assert after.split("\n")[3:] == before.split("\n")[3:]
        assert step(pilot) == 2


async def test_a_note_is_kept_in_the_walk() -> None:
    async with playing() as pilot:
        text = await press(pilot, "n", *"pupil", "space", *"q1", "enter")
        assert "! Noted: pupil q1" in text
        await press(pilot, "n", "escape")
        assert step(pilot) == 1


async def test_the_map_looks_and_moves_nothing() -> None:
    async with playing() as pilot:
        await press(pilot, "3", "enter", "m")
        assert "Phase 1 of 2" in await press(pilot, "right")
        assert "Phase 2 of 2" in await press(pilot, "right")
        assert "Phase 1 of 2" in await press(pilot, "left")
        assert "YOU ARE HERE: Is the patient" in await press(pilot, "h")
        await press(pilot, "enter")
        assert step(pilot) == 3


@pytest.mark.parametrize("key", ["enter", "space"])
async def test_the_page_turns_before_an_action_is_done(key: str) -> None:
    async with playing((60, 20)) as pilot:
        assert "more below: Enter turns the page, then means done" in await press(pilot, "3")
        turned = await press(pilot, key)
        assert step(pilot) == 2
        assert "Sources of each: press w" in turned
        assert "more below" not in turned
        await press(pilot, key)
        assert step(pilot) == 3


async def test_no_page_is_skipped_by_a_key_that_comes_before_the_paint() -> None:
    async with playing((60, 20)) as pilot:
        await pilot.press("3")
        walk = pilot.app.screen
        assert isinstance(walk, WalkScreen)
        walk.tell()
        walk.action_done()
        assert step(pilot) == 2


async def test_number_keys_answer_at_once_though_there_is_more_below() -> None:
    async with playing((40, 11)) as pilot:
        assert "more below" in seen(pilot)
        assert "DO  Hold still" in await press(pilot, "3")


async def test_an_unknown_key_is_answered_until_the_next_key() -> None:
    async with playing() as pilot:
        assert "! j is no key here; ? lists them" in await press(pilot, "j")
        assert "! z is no key here" in (text := await press(pilot, "z"))
        assert "j is" not in text
        assert "is no key here" not in await press(pilot, "down")
        assert "! f5 is no key here" in await press(pilot, "f5")
        assert "is no key here" not in await press(pilot, "3")
        await press(pilot, "j", "enter")
        assert step(pilot) == 3


async def test_the_keys_of_line_mode_go_back_and_forth_as_well() -> None:
    async with playing() as pilot:
        await press(pilot, "3", "enter")
        assert "Hold still" in await press(pilot, "b")
        assert "Is the patient comfortable?" in await press(pilot, "f")


async def test_a_small_footer_keeps_the_note_and_the_record() -> None:
    async with playing((60, 20)) as pilot:
        keys = seen(pilot).rstrip("\n").split("\n")[-1]
        assert all(told in keys for told in ("n note", "c save", "? help", "q quit"))


async def test_quitting_and_stopping() -> None:
    async with playing() as pilot:
        await pilot.press("3", "q")
        assert pilot.app.return_value == 0
    async with playing() as pilot:
        await pilot.press("3", "n", "ctrl+c")
        assert pilot.app.return_value == 130


async def test_an_unfinished_walk_is_offered_and_goes_on(tmp_path: Path) -> None:
    async with playing(walks=tmp_path, kept=True) as pilot:
        await press(pilot, "3", "enter")
        next(
            each for each in pilot.app.screen_stack if isinstance(each, WalkScreen)
        ).sitting.close()
    async with playing(pathway=None, walks=tmp_path) as pilot:
        assert "Not finished: 2 steps, begun 2026-11-25 09:00" in seen(pilot)
        assert "1  Go on where it was left" in await press(pilot, "enter")
        assert "ASK  Is the patient comfortable?" in await press(pilot, "1")
        assert "> Leaking wound" in await press(pilot, "escape")
        await press(pilot, "enter")
        assert "ASK  Does the main wound leak?" in await press(pilot, "2")


async def test_a_walk_that_cannot_be_kept_says_so_and_goes_on(tmp_path: Path) -> None:
    blocked = tmp_path / "blocked"
    blocked.write_text("")
    async with playing(walks=blocked / "walks", kept=True) as pilot:
        text = await press(pilot, "3")
        assert "! This walk is not kept" in text
        assert text.startswith(" DRAFT  NOT KEPT")
        assert "is not kept" not in await press(pilot, "enter")


async def test_paint_comes_after_the_disk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import os

    async with playing(walks=tmp_path, kept=True) as pilot:
        on_screen: list[bool] = []
        real = os.fsync

        def fsync(handle: int) -> None:
            real(handle)
            on_screen.append("Hold still" in seen(pilot))

        monkeypatch.setattr(os, "fsync", fsync)
        assert "Hold still" in await press(pilot, "3")
        assert on_screen == [False]


async def test_the_question_stays_in_view_while_the_rest_scrolls() -> None:
    async with playing((60, 20)) as pilot:
        before = await press(pilot, "3")
        assert "more below" in before
        after = await press(pilot, "pagedown", "pagedown")
        assert "DO  Hold still" in after
        assert "Suggested: Fluid" in after
        assert "more below" not in after


async def test_a_resized_terminal_lays_the_step_out_again() -> None:
    async with playing((80, 24)) as pilot:
        await press(pilot, "3")
        await pilot.resize_terminal(120, 40)
        await pilot.pause()
        assert "What is known" in seen(pilot)
        await pilot.resize_terminal(60, 20)
        await pilot.pause()
        assert "Known: Leak: Fast" in seen(pilot)


def test_nothing_of_textual_is_needed_to_sit_down() -> None:
    import subprocess
    import sys

    code = (
        "import sys, chamberwise.tui.command.walk_plain, chamberwise.tui.present.arrange, "
        "chamberwise.tui.actions;"
        "assert not {'textual', 'rich', 'networkx', 'jinja2'} & set(sys.modules)"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
    assert sitting().walk.legs == ()


async def test_in_a_tiny_window_the_question_stays() -> None:
    async with playing((40, 10)) as pilot:
        text = await press(pilot, "3")
        assert "DO  Hold still and fill the chamber" in text
        assert STANDING in " ".join(text.split())
