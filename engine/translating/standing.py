"""How each text stands in another language: translated, stale, doubtful or missing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.reading.translation_file import TranslatedText
from chamberwise.engine.translating.doubts import Doubt, doubts
from chamberwise.engine.translating.segments import Segments, text_digest


class Standing(StrEnum):
    """How one text stands. Only a translated one is shown in the other language."""

    TRANSLATED = "translated"
    STALE = "stale"
    DOUBTFUL = "doubtful"
    MISSING = "missing"


@dataclass(frozen=True, slots=True)
class Stood:
    """How one text stands, the translation it goes by, and what is doubtful in that."""

    standing: Standing
    text: TranslatedText | None = None
    doubts: tuple[Doubt, ...] = ()


Standings: TypeAlias = Mapping[Pointer, Stood]


def standings(segments: Segments, texts: Iterable[TranslatedText], language: str) -> Standings:
    """Return how each text stands. Of several translations the first that fits is taken.

    One fits when it was made of the very text that stands there now.
    """
    by_place: dict[Pointer, list[TranslatedText]] = {}
    for text in filter(lambda each: each.says, texts):
        by_place.setdefault(text.at, []).append(text)
    return {at: _stood(source, by_place.get(at, ()), language) for at, source in segments.items()}


def open_doubts(source: str, text: TranslatedText, language: str) -> tuple[Doubt, ...]:
    """Return what is doubtful in a translation and was not accepted with a reason."""
    found = doubts(source, text.says, language)
    return tuple(each for each in found if not (text.accepted and each.can_be_accepted))


def counted(stood: Iterable[Stood]) -> Counter[Standing]:
    """Return how many texts stand in each way."""
    return Counter(each.standing for each in stood)


def _stood(source: str, texts: Iterable[TranslatedText], language: str) -> Stood:
    several = tuple(texts)
    if not several:
        return Stood(Standing.MISSING)
    digest = text_digest(source)
    text = next((each for each in several if each.of == digest), None)
    if text is None:
        return Stood(Standing.STALE, several[0])
    found = open_doubts(source, text, language)
    return Stood(Standing.DOUBTFUL if found else Standing.TRANSLATED, text, found)
