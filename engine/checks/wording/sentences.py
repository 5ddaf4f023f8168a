"""Sentences, words and quoted speech in a text, as stretches of characters.

Offsets always count in the text as given, so that a hit can point at it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

_END = re.compile(r"[.!?][)\]\"”’']*+(?:\s++(?=[A-Z0-9\"“‘(\[])|$)|\n[^\S\n]*+\n")
_SHORTENED = re.compile(r"(?:\b(?:e\.g|i\.e|vs|approx|no|dr|mr|mrs|ms|prof|fig|st|etc))$", re.I)
_QUOTED = re.compile(
    r"\"[^\"]{1,300}\"|“[^”]{1,300}”|‘[^’]{1,300}’(?!\w)|«[^»]{1,300}»|(?<!\w)'[^']{1,300}'(?!\w)"
)
_WORD = re.compile(r"\S++")


def sentences(text: str) -> Iterator[tuple[int, int]]:
    """Yield start and end of each sentence that has a letter or a figure in it.

    >>> [text[a:b] for text in ["Hold still. Keep 0.5 mL ready."] for a, b in sentences(text)]
    ['Hold still.', 'Keep 0.5 mL ready.']
    """
    start = 0
    for end in _END.finditer(text):
        if _SHORTENED.search(text[max(0, end.start() - 8) : end.start()]):
            continue
        yield from _trimmed(text, start, end.end())
        start = end.end()
    yield from _trimmed(text, start, len(text))


def _trimmed(text: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    stretch = text[start:end]
    if any(character.isalnum() for character in stretch):
        start += len(stretch) - len(stretch.lstrip())
        yield start, start + len(stretch.strip())


def words(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """Return start and end of each word; a dash or a sign alone is no word."""
    found = (match.span() for match in _WORD.finditer(text, start, end))
    return [(a, b) for a, b in found if any(character.isalnum() for character in text[a:b])]


def without_quotes(text: str) -> str:
    """Blank out quoted speech with dots, keeping every other character in its place."""
    return _QUOTED.sub(lambda quoted: "·" * len(quoted.group()), text)
