"""The words of a language that a translation is compared by, read from its data file."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

FOLDER = Path(__file__).parent / "words"
"""Holds one file for each language, `CODE.toml`."""


@dataclass(frozen=True, slots=True)
class WordList:
    """Negators and what only looks like one; numbers in words; units, and what is said for `per`.

    A `*` at the end of a word stands for any rest.
    """

    negators: tuple[str, ...]
    passed_over: tuple[str, ...]
    numbers: Mapping[str, str]
    units: Mapping[str, str]
    per: tuple[str, ...]


@cache
def word_list(language: str) -> WordList | None:
    """Return the words of a language; `None` where nobody has written them down."""
    path = FOLDER / f"{language}.toml"
    if not path.is_file():
        return None
    told = tomllib.loads(path.read_text(encoding="utf-8"))
    return WordList(
        tuple(told["negators"]),
        tuple(told["passed_over"]),
        told["numbers"],
        told["units"],
        tuple(told["per"]),
    )


def any_of(words: Iterable[str]) -> str:
    """Return the pattern that finds the longest of several words or phrases.

    >>> any_of(["not", "no more than"])
    'no\\\\s+more\\\\s+than|not'
    """
    longest_first = sorted(words, key=lambda word: (-len(word), word))
    return "|".join(map(_pattern, longest_first))


def _pattern(word: str) -> str:
    rest = r"\w*" if word.endswith("*") else ""
    return r"\s+".join(re.escape(part) for part in word.rstrip("*").split()) + rest
