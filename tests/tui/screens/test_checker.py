"""The checker screen: a pathway's problems, its rules, and the way into a replay."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from threading import Event
from typing import Any

import pytest
from chamberwise.engine.reading.library import load_library
from chamberwise.tui.examining import Examined, proved
from chamberwise.tui.screens import checker
from chamberwise.tui.screens.checker import CheckerScreen
from chamberwise.tui.screens.library import LibraryScreen
from chamberwise.tui.screens.walk import WalkScreen
from textual.pilot import Pilot

from tests.exports.proof.stage import LIBRARY, loaded
from tests.tui.golden import assert_as_kept
from tests.tui.screens.playing import playing, press, seen

KEPT = Path(__file__).parent / "kept"


async def open_checker(pilot: Pilot[int], *keys: str) -> str:
    """Open the checker at the first pathway, wait for the proof, and press keys."""
    await pilot.press("p")
    screen = pilot.app.screen
    assert isinstance(screen, CheckerScreen)
    while screen.found is None or not screen.found.is_whole:
        await pilot.pause(0.02)
    await pilot.pause()
    return await press(pilot, *keys) if keys else seen(pilot)


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 40)], ids=lambda size: f"{size[0]}")
async def test_the_checker_looks_so(size: tuple[int, int]) -> None:
    async with playing(size, None, library=loaded()) as pilot:
        text = await open_checker(pilot)
    assert_as_kept(
        KEPT / f"checker-{size[0]}x{size[1]}.txt", re.sub(r"\d+ states", "99 states", text)
    )


async def test_without_colour_every_verdict_is_a_word() -> None:
    async with playing((120, 40), None, library=loaded(), colour=False) as pilot:
        text = await open_checker(pilot)
    rows = [line.partition("│")[0] for line in text.splitlines()]
    words = ("> BROKEN ", "  BROKEN ", "  does not arise ", "  holds ", "  check ")
    assert all(any(word in row for row in rows) for word in words)


async def test_down_and_up_choose_and_the_story_follows() -> None:
    async with playing((80, 24), None, library=loaded()) as pilot:
        first = await open_checker(pilot)
        assert "never comes while Chamber depth" in first
        assert "Each time after “Fill the chamber”" in await press(pilot, "down")
        assert await press(pilot, "up") == first
        problems = await press(pilot, "up", "up", "up")
        assert "> check" in problems
        assert "leaking-wound.yaml:" in problems


async def test_every_row_comes_into_view_when_chosen() -> None:
    async with playing((60, 20), None, library=loaded()) as pilot:
        await open_checker(pilot)
        screen = pilot.app.screen
        assert isinstance(screen, CheckerScreen)
        for row in (*screen.rows, *reversed(screen.rows)):
            assert "> " in seen(pilot)
            await press(pilot, "down" if row in screen.rows[screen.chosen :] else "up")


async def test_the_story_is_read_on_and_back_by_pages() -> None:
    async with playing((80, 24), None, library=loaded()) as pilot:
        first = await open_checker(pilot)
        assert ">>> HERE" not in first
        assert "more below: press Page Down" in first
        assert ">>> HERE" in await press(pilot, "pagedown")
        assert "the rest is above: press Page Up" in await press(pilot, "space", "pagedown")
        assert await press(pilot, "pageup", "pageup", "pageup") == first


async def test_enter_replays_the_walk_and_escape_comes_back(tmp_path: Path) -> None:
    async with playing((80, 24), None, library=loaded(), walks=tmp_path) as pilot:
        await open_checker(pilot)
        text = await press(pilot, "enter")
        assert isinstance(pilot.app.screen, WalkScreen)
        assert "REPLAY" in text
        assert "! Replay: Enter answers “Slow” (6 moves left)." in text
        for _ in range(5):
            text = await press(pilot, "enter")
        assert "! Here a rule breaks: No suture in a chamber that may be flat." in text
        assert "! The replay ends here." in await press(pilot, "y")
        await press(pilot, "escape")
        assert isinstance(pilot.app.screen, CheckerScreen)
    assert list(tmp_path.iterdir()) == []


async def test_only_a_broken_rule_is_replayed() -> None:
    async with playing((80, 24), None, library=loaded()) as pilot:
        text = await open_checker(pilot, *["down"] * 7, "enter")
        assert "Only a broken rule has a walk to be replayed." in text
        assert isinstance(pilot.app.screen, CheckerScreen)
        assert "Only a broken rule" not in await press(pilot, "up")


class Slowly:
    """A proof that waits until it may end."""

    def __init__(self) -> None:
        self.begun, self.may_end, self.times = Event(), Event(), 0

    def __call__(self, *about: Any) -> Examined:
        self.times += 1
        self.begun.set()
        self.may_end.wait(10)
        return proved(*about)


@pytest.fixture
def slowly(monkeypatch: pytest.MonkeyPatch) -> Iterator[Slowly]:
    slow = Slowly()
    monkeypatch.setattr(checker, "proved", slow)
    yield slow
    slow.may_end.set()


async def under_way(pilot: Pilot[int], slow: Slowly) -> str:
    await pilot.press("p")
    while not slow.begun.is_set():
        await pilot.pause(0.02)
    await pilot.pause()
    return seen(pilot)


async def test_the_check_is_shown_while_the_proof_is_under_way(slowly: Slowly) -> None:
    async with playing((80, 24), None, library=loaded()) as pilot:
        text = await under_way(pilot, slowly)
        assert "> check" in text
        assert "proof           under way" in text
        assert "> proof" in await press(pilot, "down", "enter", "pagedown")
        slowly.may_end.set()
        screen = pilot.app.screen
        assert isinstance(screen, CheckerScreen)
        while screen.found is None or not screen.found.is_whole:
            await pilot.pause(0.02)
        await pilot.pause()
        assert "BROKEN" in seen(pilot)


async def test_a_proof_can_be_left_and_comes_to_nothing_then(slowly: Slowly) -> None:
    async with playing((80, 24), None, library=loaded()) as pilot:
        await under_way(pilot, slowly)
        await press(pilot, "escape")
        assert isinstance(pilot.app.screen, LibraryScreen)
        slowly.may_end.set()
        await pilot.pause(0.1)
        assert isinstance(pilot.app.screen, LibraryScreen)


async def test_what_was_proved_is_not_proved_again(slowly: Slowly) -> None:
    slowly.may_end.set()
    async with playing((80, 24), None, library=loaded()) as pilot:
        first = await open_checker(pilot)
        await press(pilot, "escape")
        assert await press(pilot, "p") == first
    assert slowly.times == 1


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("start: first-look", "start: nowhere", "not yet: no walk is possible"),
        ("    not known: ask-depth\n", "", "a walk cannot end, or a team is left without a way"),
    ],
)
async def test_what_stands_before_the_rules_is_told_first(
    old: str, new: str, said: str, tmp_path: Path
) -> None:
    folder = shutil.copytree(LIBRARY, tmp_path / "library")
    path = folder / "leaking-wound.yaml"
    path.write_text(path.read_text().replace(old, new, 1))
    async with playing((80, 24), None, library=load_library(folder)) as pilot:
        text = await open_checker(pilot)
        assert said in text
        assert "BROKEN" not in text or text.index(said) < text.index("BROKEN")


async def test_a_pathway_without_rules_says_so() -> None:
    async with playing((80, 24), None) as pilot:
        assert "No rule binds it." in await open_checker(pilot)
