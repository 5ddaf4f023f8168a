"""Words for the reader, one breath a line: broken where a clause ends, never inside a quantity."""

from __future__ import annotations

import re
from collections.abc import Sequence

from chamberwise.exports.script.syllables import A_SECOND, syllables

MOST_WORDS = 9
MOST_SECONDS = 3
MOST_LETTERS = 46
"""What stands on one line at 14 points in a column of half an A4 page."""
_STOP = re.compile(r"[.;:,?!…][”\"')]*$")
_SENTENCE = re.compile(r"[.?!][”\"')]*$")
_NUMBER = re.compile(r"^[“(]?[\d][\d.,/–-]*$")
_JOINS = frozenset(
    re.findall(
        r"\w+",
        "and or nor but with without through until while before after when where that which if in "
        "on at to from of by for under over above below beneath behind between into as than "
        "because once out "
        "und oder aber mit ohne durch bis während bevor ehe nachdem wenn sobald wo der die das den "
        "dem dass falls in im ins an am auf zu zum zur von vom für unter über hinter zwischen als "
        "weil sonst außer",
    )
)
_UNITS = frozenset({"%", "per", "pro", "×", "x"})
_BREATH, _JOIN, _HARSH = 8.0, 2.0, 14.0


def breaths(text: str, beside: int = 0) -> tuple[str, ...]:
    """Return a text in breaths of at most 9 words, 3 seconds and one line; no two sentences share
    one unless both are in it whole.

    `beside` letters of the line are taken. What cannot be parted, a long word or a quantity, is one
    breath however long.
    """
    words = _held(text.split(" "))
    ends = [place for place, word in enumerate(words, 1) if _SENTENCE.search(word)]
    starts = [0, *ends]
    most = MOST_LETTERS - beside
    found: list[str] = []
    for start, end in zip(starts, [*ends, len(words)], strict=True):
        for each in _of_sentence(words[start:end], most):
            joined = [*found[-1:], each]
            whole = found and _SENTENCE.search(found[-1]) and _SENTENCE.search(each)
            if whole and _is_breath(joined, most):
                found[-1] = " ".join(joined)
            else:
                found.append(each)
    return tuple(found)


def _of_sentence(words: Sequence[str], most: int) -> list[str]:
    best: list[tuple[float, int]] = [(0.0, 0)]
    for end in range(1, len(words) + 1):
        costs = [
            (best[start][0] + _cost(words, start, end), start)
            for start in range(max(0, end - MOST_WORDS), end)
            if end - start == 1 or _is_breath(words[start:end], most)
        ]
        best.append(min(costs))
    return _along(words, best)


def _along(words: Sequence[str], best: Sequence[tuple[float, int]]) -> list[str]:
    found: list[str] = []
    end = len(words)
    while end:
        start = best[end][1]
        found.append(" ".join(words[start:end]))
        end = start
    return found[::-1]


def _held(words: Sequence[str]) -> list[str]:
    """Return the words, a number held to its unit by a space that does not break."""
    found: list[str] = []
    for word in words:
        if found and _holds(found[-1].split("\u00a0")[-1], word):
            found[-1] += f"\u00a0{word}"
        else:
            found.append(word)
    return found


def _holds(word: str, after: str) -> bool:
    if word in _UNITS and word != "%":
        return True
    return bool(_NUMBER.match(word)) or after.rstrip(".,;:)") in _UNITS


def _is_breath(words: Sequence[str], most: int) -> bool:
    said = " ".join(words)
    return (
        len(said.split()) <= MOST_WORDS
        and len(said) <= most
        and syllables(said) <= MOST_SECONDS * A_SECOND
    )


def _cost(words: Sequence[str], start: int, end: int) -> float:
    """Return what a breath costs: one more, and how harshly it is broken off."""
    if end == len(words) or _STOP.search(words[end - 1]):
        harsh = 0.0
    elif words[end].casefold() in _JOINS:
        harsh = _JOIN
    else:
        harsh = _HARSH
    lonely = 3.0 if end - start == 1 and len(words) > 1 else 0.0
    return _BREATH + harsh + lonely + 0.1 * (end - start - 4) ** 2
