"""The mark in every file we make, by which we know it again and may write over it."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from pathlib import Path
from zlib import crc32

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW

MARK = "Made by Chamberwise: "
"""The same in every language: a file of ours is known by it."""
HEAD = len(b"\x89PNG\r\n\x1a\n") + 25
"""Bytes of a PNG before which nothing may stand: its signature and first chunk."""
LOOKED_AT = 1 << 26


def subject(sheets: Iterable[tuple[str, str]]) -> str:
    """Return what a file is: each kind of sheet with its stamp.

    >>> subject([("wall chart", "7QK2-M4XP-3")])
    'Made by Chamberwise: wall chart, stamp 7QK2-M4XP-3. Follow local protocol.'
    """
    told = "; ".join(
        _("{sheet}, stamp {code}").format(sheet=words, code=code) for words, code in sheets
    )
    return f"{MARK}{told}. {_(FOLLOW)}"


def marked_svg(drawing: bytes, title: str, told: str) -> bytes:
    """Return a drawing with a title and description, for screen readers and for us."""
    said = f"<title>{escape(title)}</title><desc>{escape(told)}</desc>".encode()
    end = drawing.index(b">", drawing.index(b"<svg")) + 1
    return drawing[:end] + said + drawing[end:]


def marked_png(picture: bytes, title: str, told: str) -> bytes:
    """Return a picture with a title and description as texts of the PNG format."""
    texts = b"".join(_text_chunk(*each) for each in (("Title", title), ("Description", told)))
    return picture[:HEAD] + texts + picture[HEAD:]


def _text_chunk(keyword: str, text: str) -> bytes:
    body = b"iTXt" + keyword.encode() + b"\0\0\0\0\0" + text.encode()
    return (len(body) - 4).to_bytes(4) + body + crc32(body).to_bytes(4)


def marked_text(text: str, told: str) -> str:
    """Return a text with the mark as its last line."""
    return f"{text}\n\n{told}\n"


def is_ours(path: Path) -> bool:
    """Whether a file is one we made. Raises `OSError`."""
    with path.open("rb") as stream:
        return MARK.encode() in stream.read(LOOKED_AT)
