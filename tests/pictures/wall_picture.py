"""The README's picture of a wall chart: `python -m tests.pictures.wall_picture`.

It is the sheet that `chamberwise print` makes on a fixed day, on the smallest paper that holds the
whole chart, at the size of a screen.
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
PAPERS = (Paper.A3, Paper.A2, Paper.A1)
WIDTH = 960
"""Of the picture, in pixels."""


def chart() -> Sheet:
    """Return the chart on the smallest paper on which it is one sheet."""
    job = Job(load_library(ROOT / "protocols").library, PATHWAY, MADE)
    for paper in PAPERS:
        sheet = sheet_of(laid_out(ordered(job, [(Kind.WALL_CHART, Sized(paper))])))
        if len(sheet.pages) == 1:
            break
    return sheet


def picture() -> bytes:
    """Return the picture as PNG; of a chart that no paper holds, its first sheet."""
    sheet = chart()
    inches = sheet.pages[0].format.width / 25.4
    return marked_png(to_png(sheet, WIDTH / inches)[0], sheet.title, sheet.subject)


def draw() -> None:
    """Write the picture."""
    PICTURE.parent.mkdir(parents=True, exist_ok=True)
    PICTURE.write_bytes(picture())


if __name__ == "__main__":
    draw()
