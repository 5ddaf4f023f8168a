"""The forms of the terminal program, from the library and back."""

from __future__ import annotations

import pytest
from chamberwise.engine.working.registry import NAMES

from tests.tui.screens.playing import playing, press, seen

SIZES = [(80, 24), (60, 20), (120, 40)]
AT = {name: NAMES.index(name) for name in ("srk-t", "cefuroxime")}


def one_line(screen: str) -> str:
    return " ".join(screen.split())


@pytest.mark.parametrize("size", SIZES)
async def test_a_lens_is_worked_from_the_library_and_back(size: tuple[int, int]) -> None:
    async with playing(size, None) as pilot:
        assert "Lens power by thin-lens vergence" in await press(pilot, "w")
        asked = one_line(await press(pilot, *["down"] * AT["srk-t"], "enter"))
        assert "> axial-length, AL: not said (needed)" in asked
        for value in ("23.5", "7.7 mm", "118.7", "-0.25"):
            await press(
                pilot, *("minus" if each == "-" else each for each in _keys(value)), "enter"
            )
        worked = one_line(await press(pilot, "ctrl+g"))
        assert "20.94 D" in worked
        assert "Check by hand against the unit's own biometry" in worked
        back = one_line(await press(pilot, "escape"))
        assert "stock" in back
        assert "Lens power by SRK/T" in await press(pilot, "escape")
        assert "Chamberwise: pathways" in await press(pilot, "escape")


def _keys(value: str) -> list[str]:
    names = {" ": "space", ".": "full_stop", "-": "minus"}
    return [names.get(each, each) for each in value]


async def test_what_cannot_be_used_is_told_and_not_kept() -> None:
    async with playing((80, 24), None) as pilot:
        await press(pilot, "w", *["down"] * AT["srk-t"], "enter", *_keys("23.5"), "enter")
        told = one_line(await press(pilot, *_keys("7.7"), "enter"))
        assert 'say so with its unit: `K="7.7 mm"`' in told
        assert "> keratometry, K: not said (needed)" in told
        stays = one_line(await press(pilot, "down"))
        assert "> keratometry, K: not said (needed)" in stays


async def test_what_is_missing_gives_no_figure() -> None:
    async with playing((80, 24), None) as pilot:
        await press(pilot, "w", *["down"] * AT["srk-t"], "enter")
        told = one_line(await press(pilot, "ctrl+g"))
        assert "No figure is given:" in told
        assert "`axial-length` is missing" in told


async def test_enter_on_the_last_input_works_it() -> None:
    async with playing((80, 24), None) as pilot:
        await press(pilot, "w", *["down"] * AT["cefuroxime"], "enter", *"licensed-vial", "enter")
        told = one_line(await press(pilot, "enter", "enter", "enter", "enter"))
        assert "0.1 mL holds 1 mg" in told


async def test_every_form_opens_and_shows_its_first_input() -> None:
    from chamberwise.engine.working.registry import calculation

    async with playing((60, 20), None) as pilot:
        await press(pilot, "w")
        for name in NAMES:
            opened = one_line(await press(pilot, "enter"))
            first = calculation(name).inputs[0]
            assert f"> {first.name}" in opened, name
            await press(pilot, "escape", "down")
        assert seen(pilot)


async def test_keys_pressed_faster_than_the_screen_follows_stay_apart() -> None:
    """Letters after Enter belong to the next input, however fast they come."""
    from chamberwise.tui.screens.form import FormScreen
    from textual import events

    async with playing((80, 24), None) as pilot:
        await press(pilot, "w", *["down"] * AT["srk-t"], "enter")
        form = pilot.app.screen
        assert isinstance(form, FormScreen)
        for key in (*"23.5", "enter", *"43.5", "down", *"118.7", "enter"):
            form.field.post_message(events.Key(key, key if len(key) == 1 else None))
        await pilot.pause()
        assert form.typed == {"axial-length": "23.5", "keratometry": "43.5", "a-constant": "118.7"}
