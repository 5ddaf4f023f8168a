"""Screens as they look, at three sizes. Clocks are left out: their ticks depend on the paint."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from textual.pilot import Pilot

from tests.tui.golden import assert_as_kept
from tests.tui.screens.playing import playing, press, seen

KEPT = Path(__file__).parent / "kept"
SIZES = [(60, 20), (80, 24), (120, 40)]

STEPS = (
    ("question", ()),
    ("action", ("3",)),
    ("asked-again", ("enter", "1", "enter")),
    ("end", ("1",)),
)
PAGES = (
    ("why", "w"),
    ("board", "k"),
    ("map", "m"),
    ("record", "c"),
    ("help", "question_mark"),
    ("note", "n"),
)


def _to_the_end(pilot: Pilot[int], key: str) -> list[str]:
    return ["end"] if key == "enter" and "more below" in seen(pilot) else []


def without_clocks(text: str) -> str:
    """Return a page without times: the clock of the stage goes on whenever a page is drawn anew."""
    text = re.sub(r" *(walk|step) \d\d:\d\d", r" \1 --:--", text)
    text = re.sub(r"(\d\d:\d\d:)\d\d", r"\1--", text)
    return re.sub(r"\d+:\d\d(?= into)|(?<=Duration: )\d+:\d\d", "-:--", text)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_steps_look_so(size: tuple[int, int]) -> None:
    async with playing(size) as pilot:
        for name, keys in STEPS:
            for key in keys:
                await press(pilot, *_to_the_end(pilot, key), key)
            text = without_clocks(seen(pilot))
            assert_as_kept(KEPT / f"{name}-{size[0]}x{size[1]}.txt", text)


async def test_pages_look_so() -> None:
    async with playing() as pilot:
        await press(pilot, "3", "enter", "1", "enter")
        for name, key in PAGES:
            assert_as_kept(KEPT / f"{name}-80x24.txt", without_clocks(await press(pilot, key)))
            await pilot.press("escape")
        assert_as_kept(KEPT / "map-phase-80x24.txt", await press(pilot, "m", "left"))


async def test_the_library_looks_so() -> None:
    async with playing(pathway=None) as pilot:
        text = await press(pilot, "down")
    assert_as_kept(KEPT / "library-80x24.txt", text)
