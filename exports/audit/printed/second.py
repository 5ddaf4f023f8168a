"""The second reader: fonts, structure, and the words and sizes once more."""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from math import hypot
from typing import Any, NamedTuple

from chamberwise.exports.audit.printed.content import SecondLeaf, Told, Typeface
from pypdf import PageObject, PdfReader
from pypdf.generic import ByteStringObject, DecodedStreamObject, NameObject, TextStringObject

MM = 25.4 / 72
SERIF, ITALIC = 1 << 1, 1 << 6
"""Bits 2 and 7 of a font's flags."""
DRAWN = re.compile(rb"/Artifact\s*<<[^<>]*>>\s*BDC\b.*?\bEMC\b", re.DOTALL)
SETS_WORDS = re.compile(rb"\bBT\b")
NOTHING = b"\x00\x00"


class Second(NamedTuple):
    """Pages, all or some, their fonts, and what the file tells of itself."""

    leaves: tuple[SecondLeaf, ...]
    faces: tuple[Typeface, ...]
    told: Told


def second(pdf: bytes, numbers: range | None = None) -> Second:
    """Return what the second reader finds in a PDF, or on some of its pages."""
    reader = PdfReader(BytesIO(pdf))
    pages = [reader.pages[number] for number in numbers or range(len(reader.pages))]
    faces: dict[str, Typeface] = {}
    for page in pages:
        for name, face in _faces(page):
            faces.setdefault(name, face)
    return Second(tuple(_leaf(page) for page in pages), tuple(faces.values()), _told(reader))


def _told(reader: PdfReader) -> Told:
    root: Any = reader.trailer["/Root"].get_object()
    shows = _resolved(root.get("/ViewerPreferences", {})).get("/DisplayDocTitle", False)
    marks = _resolved(root.get("/MarkInfo", {})).get("/Marked", False)
    titles = reader.xmp_metadata.dc_title if reader.xmp_metadata else {}
    title = next((str(each) for each in (titles or {}).values() if each), "")
    return Told(
        str(root.get("/Lang", "")), title, bool(shows), bool(marks), "/StructTreeRoot" in root
    )


def _leaf(page: PageObject) -> SecondLeaf:
    sizes: set[float] = set()
    lost = 0

    def on_text(text: str, outer: Any, inner: Any, _font: Any, size: Any) -> None:
        if text.strip() and size:
            grown = hypot(inner[2], inner[3]) * hypot(outer[2], outer[3])
            sizes.add(round(float(size) * grown, 1))

    def on_operator(operator: Any, operands: Any, _outer: Any, _inner: Any) -> None:
        nonlocal lost
        if operator in (b"Tj", b"TJ"):
            lost += sum(_lost(each) for each in _strings(operands))

    _leave_out_drawings(page)
    text = page.extract_text(visitor_text=on_text, visitor_operand_before=on_operator)
    box = page.mediabox
    return SecondLeaf(float(box.width) * MM, float(box.height) * MM, text, frozenset(sizes), lost)


def _leave_out_drawings(page: PageObject) -> None:
    """Take lines and areas out of a page, so that reading its words is quick."""
    contents = page.get_contents()
    if contents is not None:
        words = DecodedStreamObject()
        words.set_data(DRAWN.sub(_if_it_sets_words, contents.get_data()))
        page[NameObject("/Contents")] = words


def _if_it_sets_words(drawn: re.Match[bytes]) -> bytes:
    return drawn.group() if SETS_WORDS.search(drawn.group()) else b""


def _strings(operands: Any) -> Iterator[bytes]:
    for each in operands:
        if isinstance(each, list):
            yield from _strings(each)
        elif isinstance(each, TextStringObject):
            yield each.original_bytes
        elif isinstance(each, ByteStringObject | bytes):
            yield bytes(each)


def _lost(codes: bytes) -> int:
    return sum(codes[at : at + 2] == NOTHING for at in range(0, len(codes), 2))


def _faces(page: PageObject) -> Iterator[tuple[str, Typeface]]:
    resources = _resolved(page.get("/Resources", {}))
    for each in _resolved(resources.get("/Font", {})).values():
        font = _resolved(each)
        whole = str(font.get("/BaseFont", "")).lstrip("/")
        under = font.get("/DescendantFonts")
        holder = _resolved(_resolved(under)[0]) if under else font
        told = _resolved(holder.get("/FontDescriptor", {}))
        flags = int(told.get("/Flags", 0))
        yield (
            whole,
            Typeface(
                whole.rpartition("+")[2],
                any(f"/FontFile{kind}" in told for kind in ("", "2", "3")),
                bool(flags & SERIF),
                bool(flags & ITALIC) or float(told.get("/ItalicAngle", 0)) != 0,
            ),
        )


def _resolved(value: Any) -> Any:
    return value.get_object() if hasattr(value, "get_object") else value
