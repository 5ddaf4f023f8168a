"""Where the translations of a library lie, and reading them."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from chamberwise.engine.reading.library import File, Loaded, read_file
from chamberwise.engine.reading.translation_file import TranslationFile

FOLDER = "translations"
"""Beside the pathways, one folder a language, so that its files are not taken for pathways."""


def path_of(library: Path, language: str, of: str) -> Path:
    """Return where the translation of a pathway lies, or that of the shared words."""
    return library / FOLDER / language / f"{of}.yaml"


def folders_of(loaded: Loaded, library: Path) -> tuple[Path, ...]:
    """Return the folders beside whose pathways translations lie: the library's first."""
    beside = (Path(file).resolve().parent for file in loaded.file_of.values())
    return tuple(dict.fromkeys((library.resolve(), *beside)))


def original_beside(loaded: Loaded, file: File) -> Path | None:
    """Return the pathway that a translation is of, where no library has it and its place tells."""
    if file.translation is None or file.translation.of in loaded.file_of:
        return None
    above = Path(file.shown_as).resolve().parents
    path = above[2] / f"{file.translation.of}.yaml" if len(above) > 2 else None
    return path if path and above[1].name == FOLDER and path.is_file() else None


def read_translations(library: Path, language: str = "*") -> list[File]:
    """Return the translation files of a library, into one language or into any."""
    paths = sorted((library / FOLDER).glob(f"{language}/*.yaml"))
    return [read_file(path) for path in paths]


def whole_ones(files: Iterable[File]) -> list[TranslationFile]:
    """Return the translations that could be read; single texts left out were told by `check`."""
    return [file.translation for file in files if file.translation is not None]
