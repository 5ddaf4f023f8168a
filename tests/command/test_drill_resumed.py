"""A drill taken up again: what was done is shown, and no time goes by until somebody is ready."""

from __future__ import annotations

import io
from argparse import Namespace
from pathlib import Path

import pytest
from chamberwise.engine.drill.entries import Mode, Resumed
from chamberwise.engine.store.home import drills as drills_folder
from chamberwise.tui.command.drill import Ready
from chamberwise.tui.command.drill_begin import resumed
from chamberwise.tui.line.drill_talk import READ, DrillTalk
from chamberwise.tui.line.paper import Paper
from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.rehearsing import rehearse, scenario_of

from tests.engine.drill.stage import ON, RUPTURE, shipped


@pytest.fixture(autouse=True)
def _home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))


def left_at(milliseconds: int) -> int:
    """Leave a drill at some time, and return when its last entry was made."""
    loaded, drills = shipped()
    scenario = scenario_of(loaded, drills, RUPTURE, 7, "fifth-of-six")
    now = [0]
    drill = rehearse(
        loaded, drills, scenario, Mode.RUN, ON, lambda: now[0], drills_folder(), waits=False
    )
    now[0] = milliseconds
    drill.hear("stop")
    drill.close()
    return drill.drill.journal[-1].at


def again() -> Rehearsal:
    loaded, drills = shipped()
    arguments = Namespace(pathway=None, seed=None, scenario=None, library=None)
    return resumed(Ready(arguments, loaded, drills), None)[0]


def test_no_time_goes_by_until_the_one_who_comes_back_is_ready() -> None:
    last = left_at(20_000)
    found = again()
    ticks = iter(range(1_000_000, 9_000_000, 60_000))
    found.watch = lambda: next(ticks)
    assert isinstance(found.drill.journal[-1], Resumed)
    assert [found.stopwatch() for _ in range(3)] == [last, last, last]
    assert (found.waits, found.tick()) == (None, [])
    found.start()
    assert found.stopwatch() == last + 60_000
    found.close()


def test_line_mode_shows_what_was_done_and_asks_whether_everybody_is_ready() -> None:
    left_at(20_000)
    said, asked = io.StringIO(), list[int | None]()

    def read(waits: int | None) -> str | None:
        asked.append(waits)
        return "" if len(asked) == 1 else "q"

    found = again()
    DrillTalk(found, Paper(said, 100), read, "chamberwise drill --resume").talk()
    found.close()
    text = said.getvalue()
    assert asked[0] is None
    assert text.index("So far") < text.index("Stop aspiration and ultrasound") < text.index(READ)
    assert text.count(READ) == 1
    assert "and it no longer counts" in " ".join(text.split())
    assert "and it counts" not in text
