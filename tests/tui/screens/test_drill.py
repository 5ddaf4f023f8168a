"""A drill on the screen: calm, by keyboard alone, with the clock passed in."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from chamberwise.engine.drill.entries import Certainty, Did, Mode
from chamberwise.engine.store.drill_file import kept_drills
from chamberwise.tui.app import WalkProgram
from chamberwise.tui.line.drill_script import HandSetClock
from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.rehearsing import rehearse, scenario_of
from chamberwise.tui.screens.drill import DrillScreen
from chamberwise.tui.setting import Setting
from textual.pilot import Pilot

from tests.engine.drill.stage import ON, RUPTURE, shipped
from tests.tui.screens.playing import NOWHERE, seen

Stage = tuple[Pilot[int], HandSetClock, Rehearsal]


@asynccontextmanager
async def drilling(
    folder: Path | None = None, size: tuple[int, int] = (80, 24), mode: Mode = Mode.REHEARSE
) -> AsyncIterator[Stage]:
    loaded, drills = shipped()
    clock = HandSetClock()
    scenario = scenario_of(loaded, drills, RUPTURE, 7, "fifth-of-six")
    rehearsal = rehearse(loaded, drills, scenario, mode, ON, clock, folder)
    program = WalkProgram(Setting(loaded, lambda: ON, NOWHERE), rehearsal=rehearsal)
    async with program.run_test(size=size) as pilot:
        await pilot.pause()
        yield pilot, clock, rehearsal


async def say(stage: Stage, text: str, at: int) -> str:
    pilot, clock, _ = stage
    clock.set(at * 1000)
    await pilot.press(*("space" if letter == " " else letter for letter in text), "enter")
    for _ in range(4):
        await pilot.pause()
    return seen(pilot)


async def test_cues_come_by_the_clock_and_acts_by_the_keyboard(tmp_path: Path) -> None:
    async with drilling(tmp_path) as stage:
        pilot, clock, rehearsal = stage
        assert "Brief" in seen(pilot)
        clock.set(rehearsal.drill.scenario.first_cue * 1000)
        screen = pilot.app.screen
        assert isinstance(screen, DrillScreen)
        screen.look()
        for _ in range(4):
            await pilot.pause()
        assert "suddenly deepens" in seen(pilot)
        assert "Done: Hold the tip still in the eye." in await say(stage, "hold still", 31)
        assert "drawn to a peak" in await say(stage, "pull out", 35)
        acts = [each.act for each in next(kept_drills(tmp_path)).entries if isinstance(each, Did)]
        assert acts == ["hold-tip-still", "withdraw-tip"]
        times = [entry.first_key for entry in rehearsal.drill.journal if isinstance(entry, Did)]
        assert all(each is not None for each in times)


async def test_help_and_the_way_back_have_keys() -> None:
    async with drilling() as stage:
        pilot, _, rehearsal = stage
        await say(stage, "capsule has gone", 40)
        await pilot.press("f1")
        await pilot.pause()
        assert "Nudge:" in seen(pilot)
        await say(stage, "hold still", 44)
        await pilot.press("f2")
        await pilot.pause()
        assert "Back to before: Hold the tip still" in seen(pilot)
        assert rehearsal.drill.standing.done == ("announce-rupture",)


async def test_at_its_end_the_screen_tells_what_it_came_to() -> None:
    async with drilling(mode=Mode.RUN) as stage:
        pilot, _, rehearsal = stage
        await say(stage, "pull out", 40)
        await say(stage, "back", 41)
        assert "A run has no way back" in seen(pilot)
        told = await say(stage, "end", 45)
        assert "Debrief: Posterior capsule rupture" in told
        debrief = "\n".join(part.text for part in rehearsal.debrief())
        assert "Ended:   by hand" in debrief
        assert "WHAT CAME OF IT" in debrief


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 40)])
async def test_the_line_to_type_and_the_keys_are_in_view(size: tuple[int, int]) -> None:
    async with drilling(size=size) as stage:
        shown = await say(stage, "hold still", 40)
        assert "what you do, look at or say" in shown
        assert "never live care" in shown
        assert "F1 help me" in shown
        assert all(len(line) <= size[0] for line in shown.splitlines())


async def test_no_time_goes_by_while_the_brief_is_read() -> None:
    loaded, drills = shipped()
    clock = HandSetClock()
    scenario = scenario_of(loaded, drills, RUPTURE, 7, "fifth-of-six")
    rehearsal = rehearse(loaded, drills, scenario, Mode.RUN, ON, clock, None, waits=True)
    program = WalkProgram(Setting(loaded, lambda: ON, NOWHERE), rehearsal=rehearsal)
    async with program.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        clock.set(60_000)
        assert "Enter when you have read this" in seen(pilot)
        assert rehearsal.stopwatch() == 0
        await pilot.press("enter")
        clock.set(61_000)
        assert rehearsal.stopwatch() == 1_000


async def test_a_mark_made_first_stands_behind_what_is_typed_then() -> None:
    async with drilling() as stage:
        pilot, clock, rehearsal = stage
        clock.set(rehearsal.drill.scenario.first_cue * 1000)
        await pilot.press("f4")
        await say(stage, "hold still", 31)
        done = [each for each in rehearsal.drill.journal if isinstance(each, Did)]
        assert [(each.act, each.certainty) for each in done] == [("hold-tip-still", Certainty.SURE)]


@pytest.mark.parametrize(("mode", "offered"), [(Mode.RUN, False), (Mode.REHEARSE, True)])
async def test_the_way_back_is_shown_only_where_there_is_one(mode: Mode, offered: bool) -> None:
    async with drilling(mode=mode) as (pilot, _, _):
        assert ("F2 back" in seen(pilot)) is offered


async def test_once_it_is_over_only_keys_that_do_something_are_shown() -> None:
    async with drilling() as stage:
        _pilot, clock, rehearsal = stage
        clock.set(rehearsal.drill.scenario.first_cue * 1000)
        told = await say(stage, "end", 31)
        assert told.rstrip().endswith("PgDn read on  PgUp read back  Esc leave")


async def test_no_line_end_of_the_footer_parts_a_key_from_its_word() -> None:
    async with drilling(size=(60, 20)) as (pilot, _, _):
        lines = seen(pilot).rstrip().splitlines()
        assert [line.split()[-1] for line in lines[-2:]] != ["Esc", "leave"]
        assert "Esc leave" in " ".join(lines[-2:])
