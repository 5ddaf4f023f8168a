"""The texts of drills that can be translated, and drills with their texts in another language.

What is typed, drawn, true or measured stays what it was: only what is read changes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import TypeAlias

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.drill import DrillBook
from chamberwise.engine.reading.drills import Drills
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile
from chamberwise.engine.translating.applying import saying
from chamberwise.engine.translating.retelling import Say
from chamberwise.engine.translating.retelling_drill import retold_book, retold_truth
from chamberwise.engine.translating.segments import OF_A_DRILL, Segments
from chamberwise.engine.translating.standing import Standing, Standings, standings

TRUTH = f"{OF_A_DRILL}truth"
"""Stands for what acts do in drills, which all books share."""

Retelling: TypeAlias = Callable[[Say], object]


def of_book(pathway: str) -> str:
    """Return what the translation of the drills of a pathway is of.

    >>> of_book("dropped-nucleus")
    'drill-dropped-nucleus'
    """
    return f"{OF_A_DRILL}{pathway}"


def drill_originals(drills: Drills) -> dict[str, Segments]:
    """Return the texts of every book of drills, and those that all books share."""
    books = {of_book(name): _texts_of(_of(book)) for name, book in drills.books.items()}
    return {**books, TRUTH: _texts_of(lambda say: retold_truth(drills.truth, say))}


def translated_drills(drills: Drills, language: str, files: Iterable[TranslationFile]) -> Drills:
    """Return drills in another language; what has no translation that stands is marked."""
    stood = drills_stand(drills, language, files)
    books = {
        name: retold_book(book, saying(stood[of_book(name)])) for name, book in drills.books.items()
    }
    truth = retold_truth(drills.truth, saying(stood[TRUTH]))
    counts = {name: _in_english(stood[of_book(name)], stood[TRUTH]) for name in books}
    return replace(drills, books=books, truth=truth, written=drills, in_english=counts)


def drills_stand(
    drills: Drills, language: str, files: Iterable[TranslationFile]
) -> dict[str, Standings]:
    """Return how each text of drills stands, by what its translation is of."""
    several = [each for each in files if each.language == language]
    texts: dict[str, list[TranslatedText]] = {}
    for file in several:
        texts.setdefault(file.of, []).extend(file.texts)
    return {
        name: standings(segments, texts.get(name, ()), language)
        for name, segments in drill_originals(drills).items()
    }


def _of(book: DrillBook) -> Retelling:
    return lambda say: retold_book(book, say)


def _texts_of(retelling: Retelling) -> Segments:
    found: dict[Pointer, str] = {}

    def keep(at: Pointer, text: str) -> str:
        found[at] = text
        return text

    retelling(keep)
    return found


def _in_english(*several: Standings) -> tuple[int, int]:
    """Return how many texts stand in English, of how many."""
    stood = [each for stands in several for each in stands.values()]
    return sum(each.standing is not Standing.TRANSLATED for each in stood), len(stood)
