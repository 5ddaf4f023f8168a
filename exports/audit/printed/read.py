"""Read a finished PDF with both readers."""

from __future__ import annotations

from chamberwise.exports.audit.printed.content import Printed
from chamberwise.exports.audit.printed.first import leaves
from chamberwise.exports.audit.printed.second import second


class UnreadableError(Exception):
    """The bytes are no PDF that both readers can open."""


def read(pdf: bytes) -> Printed:
    """Return what stands in a PDF, or raise `UnreadableError`."""
    try:
        pages = leaves(pdf)
        seconds, faces, told = second(pdf)
    except Exception as error:
        # Two foreign readers, each with its own errors for broken bytes.
        raise UnreadableError(f"the PDF cannot be read back: {error}") from error
    return Printed(pages, seconds, faces, told)
