"""A paragraph with what stands before it: text reports wrap it, screens lay it out themselves."""

from __future__ import annotations

from collections.abc import Iterable
from textwrap import wrap
from typing import NamedTuple

WIDTH = 78
MOST_HANGING = 16


class Paragraph(NamedTuple):
    """`lead` stands before the text; further lines are indented by `hang`, by default under it."""

    lead: str
    text: str
    hang: int | None = None

    @property
    def indent(self) -> int:
        """How far its further lines are indented."""
        return min(len(self.lead), MOST_HANGING) if self.hang is None else self.hang


GAP = Paragraph("", "")


def wrapped(paragraphs: Iterable[Paragraph]) -> list[str]:
    """Return paragraphs as lines of at most 78 columns, but for single words that are longer."""
    return [line for each in paragraphs for line in _wrapped(each)]


def _wrapped(paragraph: Paragraph) -> list[str]:
    return wrap(
        paragraph.lead + paragraph.text,
        WIDTH,
        subsequent_indent=" " * paragraph.indent,
        break_long_words=False,
        break_on_hyphens=False,
    ) or [paragraph.lead.rstrip()]
