"""The README's picture of a wall chart: `python -m tests.pictures.wall_picture`.

It is the first sheet that `chamberwise print` makes on a fixed day, at the size of a screen.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path

from chamberwise.engine.reading.library import load_library
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.marking import marked_png
from chamberwise.exports.printing.printing import Job, laid_out, ordered, sheet_of
from chamberwise.exports.typesetting.compiling import to_png

ROOT = Path(__file__).parents[2]
PICTURE = ROOT / "exports" / "pictures" / "wall-chart.png"
PATHWAY = "posterior-capsule-rupture"
MADE = date(2026, 11, 25)
SIZED = Sized(Paper.A3)
WIDTH = 960
"""Of the picture, in pixels."""


def chart() -> Sheet:
    """Return the chart on the paper it is mostly printed on."""
    job = Job(load_library(ROOT / "protocols").library, PATHWAY, MADE)
    return sheet_of(laid_out(ordered(job, [(Kind.WALL_CHART, SIZED)])))


def picture() -> bytes:
    """Return the first sheet as PNG."""
    sheet = chart()
    inches = sheet.pages[0].format.width / 25.4
    return marked_png(to_png(sheet, WIDTH / inches)[0], sheet.title, sheet.subject)


def draw() -> None:
    """Write the picture."""
    PICTURE.parent.mkdir(parents=True, exist_ok=True)
    PICTURE.write_bytes(picture())


if __name__ == "__main__":
    draw()
