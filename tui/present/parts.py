"""Paragraphs with a hanging lead, laid out to a width. Screens and line mode print the same ones.

A tone says what a stretch of text is for; only a screen decides how that looks.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from textwrap import wrap

from chamberwise.exports.flow.holding import HOLD, held


class Tone(StrEnum):
    """What a stretch of text is for. Meaning never hangs on it: the words say it as well."""

    PLAIN = "plain"
    STRONG = "strong"
    CALM = "calm"
    KEY = "key"
    HEADING = "heading"
    MARK = "mark"
    DANGER = "danger"
    WARNING = "warning"
    CAUTION = "caution"
    NOTICE = "notice"
    STALE = "stale"


@dataclass(frozen=True, slots=True)
class Part:
    """One paragraph: `lead` stands before its first line, and its other lines are indented so.

    `answer` names the answer a click on it gives.
    """

    text: str = ""
    lead: str = ""
    tone: Tone = Tone.PLAIN
    lead_tone: Tone = Tone.PLAIN
    answer: str | None = None
    hang: int | None = None
    """The indent of further lines, where it is not the width of the lead."""


GAP = Part()


@dataclass(frozen=True, slots=True)
class Row:
    """One line of print: the lead or indent, the text, and the part they come from."""

    lead: str
    text: str
    part: Part

    @property
    def plain(self) -> str:
        """The line as text."""
        return (self.lead + self.text).rstrip()


def laid_out(parts: Iterable[Part], width: int) -> list[Row]:
    """Return parts as lines no wider than `width`, but for single words that are."""
    return [row for part in parts for row in _rows(part, width)]


def _rows(part: Part, width: int) -> Iterator[Row]:
    hang = len(part.lead) if part.hang is None else part.hang
    indent = min(hang, max(0, width - 12))
    is_bare = not part.lead.strip()  # else a word that fills the line would lose its indent
    lines = wrap(
        held(part.text if is_bare else part.lead + part.text),
        max(width, 8),
        initial_indent=part.lead if is_bare else "",
        subsequent_indent=" " * indent,
        break_long_words=True,
        break_on_hyphens=False,
    ) or [part.lead]
    left = len(part.lead)
    for place, line in enumerate(line.replace(HOLD, " ") for line in lines):
        start = indent if place else 0
        cut = min(len(line), start + left)
        yield Row(line[:cut], line[cut:], part)
        left = max(0, left - (len(line) - start) - 1)


def text_lines(parts: Iterable[Part], width: int) -> list[str]:
    """Return parts as plain lines of text."""
    return [row.plain for row in laid_out(parts, width)]
