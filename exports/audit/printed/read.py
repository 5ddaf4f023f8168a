"""Read a finished PDF with both readers."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeAlias

from chamberwise.exports.audit.printed.content import Printed
from chamberwise.exports.audit.printed.first import leaves
from chamberwise.exports.audit.printed.second import Second, second


class UnreadableError(Exception):
    """The bytes are no PDF that both readers can open."""


Reader: TypeAlias = Callable[[bytes, range | None], Callable[[], Second]]
"""Sets the second reader to work and returns what tells what it found."""


def read(pdf: bytes, pages: range | None = None, reader: Reader | None = None) -> Printed:
    """Return what stands in a PDF, or on some of its pages; or raise `UnreadableError`.

    With a `reader` the second reader is at work while the first one is.
    """
    try:
        asked = reader(pdf, pages) if reader else lambda: second(pdf, pages)
        firsts = leaves(pdf, pages)
        seconds, faces, told = asked()
    except Exception as error:
        # Two foreign readers, each with its own errors for broken bytes.
        raise UnreadableError(f"the PDF cannot be read back: {error}") from error
    return Printed(firsts, seconds, faces, told)
