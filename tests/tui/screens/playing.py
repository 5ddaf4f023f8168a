"""The program on a screen of a given size, and the screen as text."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import timedelta
from pathlib import Path

from chamberwise.engine.reading.library import Loaded
from chamberwise.tui.app import WalkProgram
from chamberwise.tui.setting import Setting
from chamberwise.tui.sitting import sit_down
from textual.pilot import Pilot

from tests.tui.stage import Ticking, loaded

NOWHERE = Path("/nonexistent")


@asynccontextmanager
async def playing(
    size: tuple[int, int] = (80, 24),
    pathway: str | None = "leaking-wound",
    *,
    walks: Path = NOWHERE,
    kept: bool = False,
    tick: timedelta = timedelta(milliseconds=500),
    library: Loaded | None = None,
    colour: bool = True,
    sheets: tuple[Path, ...] = (),
) -> AsyncIterator[Pilot[int]]:
    """Open the program at a walk or, without a pathway, at the library."""
    clock = Ticking(tick)
    setting = Setting(library or loaded(), clock, walks, colour, sheets=sheets)
    walk = sit_down(loaded(), pathway, clock, walks if kept else None) if pathway else None
    async with WalkProgram(setting, walk).run_test(size=size) as pilot:
        await pilot.pause()
        yield pilot


def seen(pilot: Pilot[int]) -> str:
    """Return the screen as text, one line a row. This alone knows where Textual keeps it."""
    strips = pilot.app.screen._compositor.render_strips()
    return "".join(f"{strip.text.rstrip()}\n" for strip in strips)


async def press(pilot: Pilot[int], *keys: str) -> str:
    """Press keys and return the screen."""
    await pilot.press(*keys)
    return seen(pilot)
