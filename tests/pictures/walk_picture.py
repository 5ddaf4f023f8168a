"""The README's picture of a walk: `python -m tests.pictures.walk_picture`.

The clock is a fixed one and the answers are the first ones offered, so the same pathways give the
same bytes. Fonts are the reader's own; nothing is fetched.
"""

from __future__ import annotations

import asyncio
import re
from datetime import UTC, datetime
from pathlib import Path

from chamberwise.engine.meaning.advance import moves
from chamberwise.engine.meaning.state import Answered, Move
from chamberwise.engine.reading.library import load_library
from chamberwise.engine.walk.walk import Walk, make, set_out
from chamberwise.tui.app import WalkProgram
from chamberwise.tui.present.step_view import step_view
from chamberwise.tui.setting import Setting
from chamberwise.tui.sitting import Sitting

ROOT = Path(__file__).parents[2]
PICTURE = ROOT / "exports" / "pictures" / "walk.svg"
PATHWAY = "posterior-capsule-rupture"
SIZE = (100, 30)
BEGAN = datetime(2026, 11, 25, 9, 0, 0, tzinfo=UTC)
SHOWN = datetime(2026, 11, 25, 9, 4, 12, tzinfo=UTC)
CAME = datetime(2026, 11, 25, 9, 4, 5, tzinfo=UTC)
PLAINLY = (
    (r"<!--.*?-->\s*", ""),
    (r"@font-face\s*\{.*?\}\s*", ""),
    (r"font-family: Fira Code\b[^;]*;", "font-family: ui-monospace, monospace;"),
    (r"font-family: arial;", "font-family: sans-serif;"),
    (r"<g transform=\"translate\(26,22\)\">.*?</g>\s*", ""),
)
"""No remote fonts, no other program's window."""


def walk_to_show() -> tuple[Setting, Walk]:
    """Return a walk on a question that is asked again."""
    loaded = load_library(ROOT / "protocols")
    walk = set_out(loaded.library, PATHWAY, "", BEGAN)
    while not _shows_enough(walk):
        walk = make(walk, _first(walk), CAME)
    return Setting(loaded, lambda: SHOWN, ROOT), walk


def _first(walk: Walk) -> Move:
    found = moves(walk.library, walk.state)
    return next((move for move in found if move != Answered("cannot tell")), found[0])


def _shows_enough(walk: Walk) -> bool:
    view = step_view(walk, SHOWN.date())
    return bool(view.asked_again) and len(view.answers) >= 4


async def picture() -> str:
    """Return the picture as SVG, with the reader's own fixed-width font."""
    setting, walk = walk_to_show()
    program = WalkProgram(setting, Sitting(setting.loaded, walk, setting.clock, None))
    async with program.run_test(size=SIZE) as pilot:
        await pilot.pause()
        svg = program.export_screenshot(title="chamberwise walk")
    for pattern, instead in PLAINLY:
        svg = re.sub(pattern, instead, svg, flags=re.DOTALL)
    return svg


def draw() -> None:
    """Write the picture."""
    PICTURE.parent.mkdir(parents=True, exist_ok=True)
    PICTURE.write_text(asyncio.run(picture()), encoding="utf-8")


if __name__ == "__main__":
    draw()
