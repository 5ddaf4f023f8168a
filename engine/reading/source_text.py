"""From bytes to text, with a clear refusal of everything that is not a modest UTF-8 text file."""

from __future__ import annotations

import re
import stat
from pathlib import Path

from chamberwise.engine.diagnostics.problem import Problem, Span
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import codes
from chamberwise.engine.reading.characters import first_hidden

LARGEST = 8 * 1024 * 1024
_TOLD = 0
"""No number of the system: the reason is told in words of our own."""
_DELETE_IT = N_("Delete it. Where an editor hides it, type the line anew.")
_CONFLICT = re.compile(r"(?:\A|(?<=[\r\n]))(?:(?:<{7}|>{7}|\|{7})(?=\s|\Z)|={7}(?=[\r\n]|\Z))")
_HARD_SPACE = re.compile(r"(?:\A|(?<=[\r\n]))[ ]*(?:- )?(?:[a-z][a-z -]*:)?[ ]*(?P<space>\u00a0)")
_NO_BREAK = "\u00a0"
_MARKS = tuple(sign * 7 for sign in "<>|=")
"""Looked for first: that takes no time, and hardly a file has any of them."""
_TYPE_SPACES = N_("Delete it and type a plain space.")
_OTHER_KINDS = {
    b"\xff\xfe\x00\x00": "UTF-32",
    b"\x00\x00\xfe\xff": "UTF-32",
    b"\xff\xfe": "UTF-16",
    b"\xfe\xff": "UTF-16",
    b"\x1f\x8b": "gzip",
    b"PK\x03\x04": N_("a word processor's file or an archive"),
    b"%PDF-": "PDF",
}


def load(path: Path, shown_as: str) -> tuple[str | None, list[Problem]]:
    """Return a file's text, or `None` and the problem that stopped it."""
    try:
        data = _bytes(path)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or type(error).__name__
        is_of_the_system = getattr(error, "errno", None) != _TOLD
        shown = reason.lower() if is_of_the_system else reason
        message = _("cannot be opened: {reason}").format(reason=shown)
        return None, [codes.UNREADABLE.at(shown_as, (), None, message, _("Check the path."))]
    return decode(data, shown_as)


def _bytes(path: Path) -> bytes:
    """Return a little more than the largest file may hold; a pipe is not waited for."""
    mode = path.stat().st_mode
    if not stat.S_ISREG(mode):
        raise OSError(
            _TOLD, _("it is a folder") if stat.S_ISDIR(mode) else _("it is no plain file")
        )
    with path.open("rb") as handle:
        return handle.read(LARGEST + 1)


def decode(data: bytes, shown_as: str) -> tuple[str | None, list[Problem]]:
    """Return the text of UTF-8 bytes, or `None` and the problem that stopped it."""
    if len(data) > LARGEST:
        return None, [_too_large(shown_as)]
    for mark, name in _OTHER_KINDS.items():
        if data.startswith(mark):
            return None, [
                _not_text(shown_as, None, _("the file is {name}, not UTF-8").format(name=_(name)))
            ]
    try:
        return data.decode("utf-8-sig"), []
    except UnicodeDecodeError as error:
        start = error.start + (3 if data.startswith(b"\xef\xbb\xbf") else 0)
        before = data[:start].decode("utf-8-sig", "replace")
        found = _("byte 0x{byte:02x} is not UTF-8").format(byte=data[start])
        return None, [_not_text(shown_as, point(before, len(before)), found)]


def refusals(text: str, shown_as: str) -> list[Problem]:
    """Return the problem that stops a text from being read, if there is one."""
    if len(text) > LARGEST:
        return [_too_large(shown_as)]
    if text[:2].count("\0"):
        return [_not_text(shown_as, None, _("the file is UTF-16 or no text, not UTF-8"))]
    if hidden := first_hidden(text):
        place, found = hidden
        span = point(text, place)
        return [
            codes.HIDDEN_CHARACTER.at(
                shown_as, (), span, _("{found} stands here").format(found=found), _(_DELETE_IT)
            )
        ]
    if _NO_BREAK in text and (hard := _HARD_SPACE.search(text)):
        span = point(text, hard.start("space"))
        message = _("a hard space U+00A0 stands where a plain one is due")
        return [codes.HIDDEN_CHARACTER.at(shown_as, (), span, message, _(_TYPE_SPACES))]
    if any(mark in text for mark in _MARKS) and (conflict := _CONFLICT.search(text)):
        advice = _("Keep one of the two versions and delete the three marker lines.")
        message = _("a merge conflict was left in the file")
        span = point(text, conflict.start(), 7)
        return [codes.MERGE_CONFLICT.at(shown_as, (), span, message, advice)]
    return []


def _too_large(file: str) -> Problem:
    message = _("larger than {size} MiB").format(size=LARGEST // 2**20)
    advice = _("Split it into one file a pathway.")
    return codes.TOO_LARGE.at(file, (), None, message, advice)


def _not_text(file: str, span: Span | None, message: str) -> Problem:
    advice = _("Save the file as plain text in UTF-8.")
    return codes.NOT_TEXT.at(file, (), span, message, advice)


def point(text: str, offset: int, width: int = 1) -> Span:
    """Return the place of a character; every end of line that an editor knows counts once."""
    before = text[:offset].replace("\r\n", "\n").replace("\r", "\n")
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    return Span(line, column, line, column + width)
