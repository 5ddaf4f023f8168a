"""The height of small letters as the audit reckons it, against the pixels of what was printed."""

from __future__ import annotations

from datetime import date
from itertools import groupby

import pypdfium2
import pytest
from chamberwise.exports.audit.rules.legibility.stroke_width import STEMS
from chamberwise.exports.legibility.angle import x_height
from chamberwise.exports.paper.sheet import Page, Role, Sheet, Weight
from chamberwise.exports.paper.sizes import Format, Paper, Sized
from chamberwise.exports.typesetting.compiling import to_pdf

from tests.exports.audit.sheets import text

SCALE = 20


def printed(words: str, size: float, weight: Weight = Weight.REGULAR) -> list[list[bool]]:
    """Return rows of dark pixels, `SCALE` to a point."""
    item = text(words, 5, 5, size, Role.LINE, weight=weight, width=100)
    page = Page(room(size), (item,))
    pdf = to_pdf(Sheet("T", "s", "en", date(2026, 11, 25), (page,)))
    bitmap = pypdfium2.PdfDocument(pdf)[0].render(scale=SCALE, grayscale=True)
    rows = bytes(bitmap.buffer)
    return [
        [level < 128 for level in rows[at : at + bitmap.width]]
        for at in range(0, len(rows), bitmap.stride)
    ]


def room(size: float) -> Format:
    return Sized(Paper.A4).format._replace(width=20 + size * 0.4, height=10 + size * 0.5)


@pytest.mark.parametrize("size", [9.2, 14.0, 20.0, 26.0, 32.0, 72.0])
def test_small_letters_are_as_high_as_reckoned(size: float) -> None:
    rows = [any(row) for row in printed("x", size)]
    high = max(len(list(run)) for is_dark, run in groupby(rows) if is_dark)
    assert high / SCALE * 25.4 / 72 == pytest.approx(x_height(size), rel=0.012)


@pytest.mark.parametrize("weight", list(Weight))
def test_strokes_are_no_thinner_than_reckoned(weight: Weight) -> None:
    rows = printed("H", 72.0, weight)
    dark = [row for row in rows if any(row)]
    upright = dark[len(dark) // 4]
    runs = [len(list(run)) for is_dark, run in groupby(upright) if is_dark]
    assert min(runs) / SCALE / 72 >= STEMS[weight] - 0.003
