"""A team's drill on the screen: a key is an event, Enter opens the line, roles and never names."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from chamberwise.engine.drill.entries import Asked, Did, Mode, ReadBack, Recognised, ReportedDone
from chamberwise.tui.app import WalkProgram
from chamberwise.tui.line.drill_script import HandSetClock
from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.rehearsing import rehearse, scenario_of
from chamberwise.tui.screens.team_drill import TeamDrillScreen
from chamberwise.tui.setting import Setting
from textual.pilot import Pilot

from tests.engine.drill.stage import ON, RUPTURE, shipped
from tests.tui.screens.playing import NOWHERE, seen

ROLES = (
    *("surgeon", "assistant", "scrub-practitioner", "circulating-practitioner", "reader"),
    *("anaesthetic-practitioner", "patients-companion"),
)


@asynccontextmanager
async def drilling(
    folder: Path | None = None, size: tuple[int, int] = (80, 24), *, waits: bool = False
) -> AsyncIterator[tuple[Pilot[int], HandSetClock, Rehearsal]]:
    loaded, drills = shipped()
    clock = HandSetClock()
    scenario = scenario_of(loaded, drills, RUPTURE, 7, "fifth-of-six")
    rehearsal = rehearse(
        loaded, drills, scenario, Mode.REHEARSE, ON, clock, folder, ROLES, waits=waits
    )
    program = WalkProgram(Setting(loaded, lambda: ON, NOWHERE), rehearsal=rehearsal)
    async with program.run_test(size=size) as pilot:
        await pilot.pause()
        clock.set((scenario.first_cue + 1) * 1000)
        yield pilot, clock, rehearsal


async def press(pilot: Pilot[int], *keys: str) -> str:
    await pilot.press(*keys)
    for _ in range(4):
        await pilot.pause()
    return seen(pilot)


async def test_the_brief_is_read_before_time_goes_by_and_the_keys_begin() -> None:
    async with drilling(waits=True) as (pilot, _, rehearsal):
        assert "Brief" in seen(pilot)
        await press(pilot, "a")
        assert rehearsal.is_waiting
        assert "The senior surgeon is in the next theatre." in await press(pilot)
        await press(pilot, "enter")
        assert not rehearsal.is_waiting


async def test_a_key_is_an_event_and_a_request_takes_three() -> None:
    async with drilling() as (pilot, _, rehearsal):
        assert isinstance(pilot.app.screen, TeamDrillScreen)
        await press(pilot, "a", "d", "j", "j", "j")
        kinds = (Did, Recognised, Asked, ReadBack, ReportedDone)
        done = [each for each in rehearsal.drill.journal if isinstance(each, kinds)]
        assert [type(each) for each in done] == [
            *(Did, ReportedDone),
            *(Recognised, Did, ReportedDone),
            *(Asked, ReadBack, Did, ReportedDone),
        ]
        assert {each.who for each in done} <= set(ROLES)
        assert "Fill the chamber through the side port" in seen(pilot)


async def test_words_have_a_line_of_their_own_and_letters_in_it_are_no_events() -> None:
    async with drilling() as (pilot, _, rehearsal):
        await press(pilot, "enter", *"hold", "space", *"still", "enter")
        acts = [each.act for each in rehearsal.drill.journal if isinstance(each, Did)]
        assert acts == ["hold-tip-still"]
        await press(pilot, "enter", *"cal", "escape", "c")
        acts = [each.act for each in rehearsal.drill.journal if isinstance(each, Did)]
        assert acts == ["hold-tip-still", "stop-aspiration"]


async def test_open_tasks_reader_and_board_stand_at_80_by_24() -> None:
    async with drilling() as (pilot, _, _):
        told = await press(pilot, "a")
        assert "Stop aspiration and ultrasound" in told
        assert "more: . shows all" in told
        assert "Reader 1: Tip still. Aspiration off." in await press(pilot, "greater_than_sign")
        assert "[open]" in await press(pilot, "full_stop")


async def test_at_its_end_it_says_what_nobody_reported_done() -> None:
    async with drilling() as (pilot, _, rehearsal):
        await press(pilot, "a")
        told = await press(pilot, "enter", *"end", "enter")
        assert rehearsal.is_over
        assert "Tasks that nobody reported done" in told


async def test_a_task_done_in_words_is_open_no_longer() -> None:
    async with drilling() as (pilot, _, _):
        await press(pilot, "enter", *"stop", "enter")
        assert "c  Surgeon: Stop aspiration" not in seen(pilot)
        assert "Done already." in await press(pilot, "c")
