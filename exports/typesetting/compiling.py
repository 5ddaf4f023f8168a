"""Placed sheets to PDF, SVG and PNG, the same bytes for the same sheet."""

from __future__ import annotations

import json
from datetime import UTC, datetime, time
from functools import cache
from pathlib import Path

import typst
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.typesetting.fonts import font_folder
from chamberwise.exports.typesetting.values import sheet_values

HERE = Path(__file__).parent
STANDARDS: list[typst.PDFStandard] = ["a-2a", "ua-1"]


class UnprintableError(Exception):
    """The sheet cannot be set: a letter that the font lacks, or a fault of ours."""


@cache
def fonts() -> typst.Fonts:
    """Return our font alone."""
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(font_folder())]
    )


def compiler(source: bytes | None = None) -> typst.Compiler:
    """Return the compiler, of a source if one is given; it reads no file outside this folder."""
    return typst.Compiler(source, root=str(HERE), font_paths=fonts(), ignore_system_fonts=True)


def to_pdf(sheet: Sheet) -> bytes:
    """Return a tagged PDF, or raise `UnprintableError`."""
    made = datetime.combine(sheet.made, time(), UTC)
    try:
        found = compiler().compile(
            input=str(HERE / "sheet.typ"),
            format="pdf",
            sys_inputs=_data(sheet),
            pdf_standards=STANDARDS,
            timestamp=made,
        )
    except typst.TypstError as error:
        raise UnprintableError(error.message) from error
    assert isinstance(found, bytes)
    return found


def to_svg(sheet: Sheet) -> list[bytes]:
    """Return one drawing a page; its letters are outlines."""
    return _pages(sheet, "svg", None)


def to_png(sheet: Sheet, per_inch: float = 150) -> list[bytes]:
    """Return one picture a page."""
    return _pages(sheet, "png", per_inch)


def _pages(sheet: Sheet, kind: typst.OutputFormat, per_inch: float | None) -> list[bytes]:
    try:
        found = compiler().compile(
            input=str(HERE / "sheet.typ"), format=kind, sys_inputs=_data(sheet), ppi=per_inch
        )
    except typst.TypstError as error:
        raise UnprintableError(error.message) from error
    assert found is not None
    return [found] if isinstance(found, bytes) else found


def _data(sheet: Sheet) -> dict[str, str]:
    return {"data": json.dumps(sheet_values(sheet), ensure_ascii=False)}
