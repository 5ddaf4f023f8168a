from __future__ import annotations

from tests.tui.screens.playing import playing, press


async def test_what_is_out_of_view_is_always_told() -> None:
    async with playing(size=(60, 20)) as pilot:
        page = await press(pilot, "3")
        assert "more below" in page
        while "more below" in page:
            page = await press(pilot, "pagedown")
        assert "the rest is above" in page
        assert "more below" in await press(pilot, "pageup", "pageup", "pageup")
