"""The first reader: every text and path of a PDF as its page paints it, and the page's pixels."""

from __future__ import annotations

from collections.abc import Callable
from ctypes import c_char, c_float, c_int, c_uint, c_ushort
from math import atan2, degrees, hypot
from typing import Any
from zlib import compress

import pypdfium2  # type: ignore[import-untyped]
from chamberwise.exports.audit.geometry import Box, Point
from chamberwise.exports.audit.printed.content import Leaf, Path, Pixels, Stretch
from pypdfium2 import raw

MM = 25.4 / 72
MOST_PIXELS = 5_000_000
FEW = 4
"""Pages; the pixels of more are squeezed, which takes about as long as looking at them."""
FINEST = 150
"""Pixels an inch; larger papers are looked at more coarsely."""
_BROKEN = {"\x02": "-", "\ufffe": "-"}
"""How the reader tells a hyphen at the end of a line."""


def leaves(pdf: bytes, pages: range | None = None) -> tuple[Leaf, ...]:
    """Return the pages of a PDF, or those whose numbers from nought are given."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        numbers = pages or range(len(document))
        keep = Pixels if len(numbers) <= FEW else _squeezed
        return tuple(_leaf(document[number], keep) for number in numbers)
    finally:
        document.close()


def _squeezed(grey: bytes) -> Pixels:
    return Pixels(compress(grey, 1), is_squeezed=True)


def _leaf(page: Any, keep: Callable[[bytes], Pixels]) -> Leaf:
    width, height = page.get_size()
    words = page.get_textpage()
    stretches: list[Stretch] = []
    paths: list[Path] = []
    pictures = 0
    for order in range(raw.FPDFPage_CountObjects(page.raw)):
        item = raw.FPDFPage_GetObject(page.raw, order)
        kind = raw.FPDFPageObj_GetType(item)
        if kind == raw.FPDF_PAGEOBJ_TEXT:
            stretches.append(_stretch(item, words, height, order))
        elif kind == raw.FPDF_PAGEOBJ_PATH:
            paths.append(_path(item, height, order))
        else:
            pictures += kind == raw.FPDF_PAGEOBJ_IMAGE
    grey, across = _pixels(page, width, height)
    return Leaf(
        width * MM,
        height * MM,
        tuple(each for each in stretches if each.text.strip()),
        tuple(paths),
        pictures,
        keep(grey),
        across,
    )


def _pixels(page: Any, width: float, height: float) -> tuple[bytes, int]:
    scale = min(FINEST / 72, (MOST_PIXELS / (width * height)) ** 0.5)
    bitmap = page.render(scale=scale, grayscale=True)
    across, stride = bitmap.width, bitmap.stride
    rows = bytes(bitmap.buffer)
    bitmap.close()
    if stride != across:
        rows = b"".join(rows[at : at + across] for at in range(0, len(rows), stride))
    return rows, across


def _stretch(item: Any, words: Any, height: float, order: int) -> Stretch:
    matrix = _matrix(item)
    size = c_float()
    raw.FPDFTextObj_GetFontSize(item, size)
    tall = hypot(matrix.c, matrix.d) or 1.0
    lean = (matrix.a * matrix.c + matrix.b * matrix.d) / (hypot(matrix.a, matrix.b) * tall or 1.0)
    return Stretch(
        _words(item, words.raw),
        _font(item),
        size.value * tall,
        _fill(item) or "#000000",
        _box(item, height),
        (matrix.e * MM, (height - matrix.f) * MM),
        -degrees(atan2(matrix.b, matrix.a)),
        lean,
        order,
    )


def _words(item: Any, words: Any) -> str:
    length = raw.FPDFTextObj_GetText(item, words, None, 0)
    room = (c_ushort * (length // 2 + 1))()
    raw.FPDFTextObj_GetText(item, words, room, length)
    text: str = bytes(room)[: max(0, length - 2)].decode("utf-16-le", "replace")
    for read, meant in _BROKEN.items():
        text = text.replace(read, meant)
    return text


def _font(item: Any) -> str:
    font = raw.FPDFTextObj_GetFont(item)
    length = raw.FPDFFont_GetBaseFontName(font, None, 0)
    room = (c_char * max(1, length))()
    raw.FPDFFont_GetBaseFontName(font, room, length)
    name: str = room.value.decode("utf-8", "replace")
    return name.rpartition("+")[2]


def _path(item: Any, height: float, order: int) -> Path:
    mode, has_stroke, weight = c_int(), c_int(), c_float()
    raw.FPDFPath_GetDrawMode(item, mode, has_stroke)
    raw.FPDFPageObj_GetStrokeWidth(item, weight)
    return Path(
        _box(item, height),
        _points(item, height),
        _fill(item) if mode.value != raw.FPDF_FILLMODE_NONE else None,
        _stroke(item) if has_stroke.value else None,
        weight.value * MM,
        order,
        raw.FPDFPageObj_GetDashCount(item) > 0,
    )


def _points(item: Any, height: float) -> tuple[Point, ...]:
    matrix = _matrix(item)
    found: list[Point] = []
    for place in range(raw.FPDFPath_CountSegments(item)):
        x, y = c_float(), c_float()
        raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(item, place), x, y)
        across = matrix.a * x.value + matrix.c * y.value + matrix.e
        up = matrix.b * x.value + matrix.d * y.value + matrix.f
        found.append((across * MM, (height - up) * MM))
    return tuple(found)


def _matrix(item: Any) -> Any:
    matrix = raw.FS_MATRIX()
    raw.FPDFPageObj_GetMatrix(item, matrix)
    return matrix


def _box(item: Any, height: float) -> Box:
    left, bottom, right, top = c_float(), c_float(), c_float(), c_float()
    raw.FPDFPageObj_GetBounds(item, left, bottom, right, top)
    return Box(
        left.value * MM, (height - top.value) * MM, right.value * MM, (height - bottom.value) * MM
    )


def _fill(item: Any) -> str | None:
    return _colour(item, raw.FPDFPageObj_GetFillColor)


def _stroke(item: Any) -> str | None:
    return _colour(item, raw.FPDFPageObj_GetStrokeColor)


def _colour(item: Any, ask: Any) -> str | None:
    red, green, blue, opaque = c_uint(), c_uint(), c_uint(), c_uint()
    if not ask(item, red, green, blue, opaque):
        return None
    return f"#{red.value:02x}{green.value:02x}{blue.value:02x}"
