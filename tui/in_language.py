"""The library as it is shown in the language that was asked for."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.speaking import spoken

if TYPE_CHECKING:
    from chamberwise.engine.reading.drills import Drills
    from chamberwise.engine.reading.library import Loaded
    from chamberwise.engine.reading.translation_file import TranslationFile


def in_language(loaded: Loaded, folder: Path) -> Loaded:
    """Return a library with its texts in the language that is spoken.

    `folder` is the library's. Checks and proofs are made before, of the texts as they were written.
    """
    return loaded if spoken() is ENGLISH else translated_into(loaded, folder, spoken().code)


def drills_in_language(drills: Drills, folder: Path) -> Drills:
    """Return drills with their texts in the language that is spoken. `folder` is the library's."""
    if spoken() is ENGLISH:
        return drills
    from chamberwise.engine.translating.drill_texts import translated_drills

    return translated_drills(drills, spoken().code, translations(folder, spoken().code))


def translated_into(loaded: Loaded, folder: Path, language: str) -> Loaded:
    """Return a library with its texts in a language other than its own."""
    from chamberwise.engine.translating.applying import translated

    return translated(loaded, language, translations(folder, language, loaded))


def translations(
    folder: Path, language: str, loaded: Loaded | None = None
) -> list[TranslationFile]:
    """Return the translations of a library into a language, as far as they could be read.

    Those that lie beside other pathways of it are among them.
    """
    from chamberwise.engine.translating.finding import folders_of, read_translations, whole_ones

    folders = folders_of(loaded, folder) if loaded else (folder,)
    return whole_ones(file for each in folders for file in read_translations(each, language))
