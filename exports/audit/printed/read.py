"""Read a finished PDF with both readers."""

from __future__ import annotations

from chamberwise.exports.audit.printed.content import Printed
from chamberwise.exports.audit.printed.first import leaves
from chamberwise.exports.audit.printed.second import second


class UnreadableError(Exception):
    """The bytes are no PDF that both readers can open."""


def read(pdf: bytes, pages: range | None = None) -> Printed:
    """Return what stands in a PDF, or on some of its pages; or raise `UnreadableError`."""
    try:
        firsts = leaves(pdf, pages)
        seconds, faces, told = second(pdf, pages)
    except Exception as error:
        # Two foreign readers, each with its own errors for broken bytes.
        raise UnreadableError(f"the PDF cannot be read back: {error}") from error
    return Printed(firsts, seconds, faces, told)
