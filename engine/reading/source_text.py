"""From bytes to text, with a clear refusal of everything that is not a modest UTF-8 text file."""

from __future__ import annotations

import re
from pathlib import Path

from chamberwise.engine.diagnostics.problem import Problem, Span
from chamberwise.engine.reading import codes

LARGEST = 32 * 1024 * 1024
_NOT_PRINTABLE = re.compile("[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_CONFLICT = re.compile(r"^(?:<{7}|>{7}|\|{7})(?:\s|$)", re.MULTILINE)
_OTHER_ENCODINGS = {b"\xff\xfe": "UTF-16", b"\xfe\xff": "UTF-16", b"\x1f\x8b": "gzip"}


def load(path: Path, shown_as: str) -> tuple[str | None, list[Problem]]:
    """Return a file's text, or `None` and the problem that stopped it."""
    try:
        with path.open("rb") as handle:
            data = handle.read(LARGEST + 1)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        return None, [
            codes.UNREADABLE.at(
                shown_as, (), None, f"cannot be opened: {reason.lower()}", "Check the path."
            )
        ]
    return decode(data, shown_as)


def decode(data: bytes, shown_as: str) -> tuple[str | None, list[Problem]]:
    """Return the text of UTF-8 bytes, or `None` and the problem that stopped it."""
    if len(data) > LARGEST:
        message = f"larger than {LARGEST // 2**20} MiB"
        advice = "Split it into one file a pathway."
        return None, [codes.TOO_LARGE.at(shown_as, (), None, message, advice)]
    for mark, name in _OTHER_ENCODINGS.items():
        if data.startswith(mark):
            return None, [_not_text(shown_as, None, f"the file is {name}, not UTF-8")]
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8", "replace")
        found = f"byte 0x{data[error.start]:02x} is not UTF-8"
        return None, [_not_text(shown_as, _point(before, len(before)), found)]
    if odd := _NOT_PRINTABLE.search(text):
        found = f"control character U+{ord(odd.group()):04X}"
        return None, [_not_text(shown_as, _point(text, odd.start()), found)]
    if conflict := _CONFLICT.search(text):
        advice = "Keep one of the two versions and delete the three marker lines."
        message = "a merge conflict was left in the file"
        span = _point(text, conflict.start(), 7)
        return None, [codes.MERGE_CONFLICT.at(shown_as, (), span, message, advice)]
    return text, []


def _not_text(file: str, span: Span | None, message: str) -> Problem:
    advice = "Save the file as plain text in UTF-8."
    return codes.NOT_TEXT.at(file, (), span, message, advice)


def _point(text: str, offset: int, width: int = 1) -> Span:
    line = text.count("\n", 0, offset) + 1
    column = offset - (text.rfind("\n", 0, offset) + 1) + 1
    return Span(line, column, line, column + width)
