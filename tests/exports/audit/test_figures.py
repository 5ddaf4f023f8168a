"""Lines and symbols of finished files, held to what was placed; faults planted in the file."""

from __future__ import annotations

import re
from collections.abc import Callable
from io import BytesIO

import pytest
from chamberwise.exports.audit.figures import Differences, differences
from chamberwise.exports.audit.printed.first import leaves
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.kinds import usual
from chamberwise.exports.printing.printing import Form, Job, laid_out, ordered, printed, sheet_of
from pypdf import PdfReader, PdfWriter
from pypdf.generic import DecodedStreamObject, NameObject

from tests.exports.flow.stage import FLAGSHIP, TODAY, shipped

DRAWN = (Kind.WALL_CHART, Kind.FULL)
ARROW = re.compile(rb"([\d.]+) ([\d.]+) m ([\d.]+) \2 l\nS")
"""A level line, as the writer puts it."""
CIRCLE = re.compile(rb"cs 0 0 0 scn(?=[^\n]* c\n)")
"""The dark ground of a round symbol."""


def made(kind: Kind) -> tuple[Sheet, bytes]:
    sheet = sheet_of(laid_out(ordered(Job(shipped(), FLAGSHIP, TODAY), [(kind, usual(kind))])))
    return sheet, printed(sheet, Form.PDF)[0]


def found(sheet: Sheet, pdf: bytes) -> list[Differences]:
    pages = zip(sheet.pages, leaves(pdf), strict=True)
    return [each for each in (differences(page, leaf) for page, leaf in pages) if any(each)]


@pytest.mark.parametrize("kind", DRAWN, ids=str)
def test_every_line_and_symbol_is_found_again_and_nothing_else(kind: Kind) -> None:
    assert found(*made(kind)) == []


def misrouted(drawing: bytes) -> bytes:
    """Lead the third level line to another height."""
    line = list(ARROW.finditer(drawing))[2]
    start, level, end = line.groups()
    lower = b"%.4f" % (float(level) + 20)
    bent = b"%s %s m %s %s l\nS" % (start, level, end, lower)
    return drawing[: line.start()] + bent + drawing[line.end() :]


def one_too_many(drawing: bytes) -> bytes:
    return drawing + b"\nq 0 0 0 RG 2 w 100 100 m 300 100 l S Q"


def one_too_few(drawing: bytes) -> bytes:
    line = list(ARROW.finditer(drawing))[2]
    return drawing[: line.start()] + b"0 0 m n" + drawing[line.end() :]


def recoloured(drawing: bytes) -> bytes:
    """Make a row of the chart look like a step of the full pathway."""
    assert CIRCLE.search(drawing)
    return CIRCLE.sub(b"cs 1 1 1 scn", drawing, count=1)


@pytest.mark.parametrize(
    ("kind", "plant", "missing", "strange"),
    [
        (Kind.WALL_CHART, misrouted, ["line"], ["line"]),
        (Kind.FULL, misrouted, ["line"], ["line"]),
        (Kind.WALL_CHART, one_too_many, [], ["line"]),
        (Kind.WALL_CHART, one_too_few, ["line"], []),
        (Kind.WALL_CHART, recoloured, ["round symbol"], ["round symbol"]),
    ],
)
def test_what_is_planted_in_the_finished_file_is_found(
    kind: Kind, plant: Callable[[bytes], bytes], missing: list[str], strange: list[str]
) -> None:
    sheet, pdf = made(kind)
    ((gone, come),) = found(sheet, planted(pdf, 1, plant))
    assert [each.kind for each in gone] == missing
    assert [each.kind for each in come] == strange


def planted(pdf: bytes, number: int, plant: Callable[[bytes], bytes]) -> bytes:
    """Return the file with the drawing of one of its pages changed."""
    writer = PdfWriter(PdfReader(BytesIO(pdf)))
    page = writer.pages[number]
    contents = page.get_contents()
    assert contents is not None
    stream = DecodedStreamObject()
    stream.set_data(plant(contents.get_data()))
    page[NameObject("/Contents")] = writer._add_object(stream)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()
