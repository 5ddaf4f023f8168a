"""A translation as read: texts by place, each with the digest of what it was made of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.reading.build_values import Raw
from chamberwise.engine.reading.form_translation import REVIEWED
from chamberwise.engine.reading.places import place_of


@dataclass(frozen=True, slots=True)
class TranslatedText:
    """One text in another language. `stands` is the place of the entry in its own file.

    `says` is empty where nobody has translated it yet.
    """

    at: Pointer
    of: str
    says: str
    stands: Pointer
    source: str = ""
    accepted: str = ""
    within: str = ""
    """In a sheet: the pathway meant, where that is not the one below it."""


@dataclass(frozen=True, slots=True)
class TranslationFile:
    """The translation of one pathway, or of the shared words."""

    of: str
    language: str
    texts: tuple[TranslatedText, ...]
    aside: tuple[TranslatedText, ...] = ()
    """Translations of texts that are there no more, kept to be used again."""
    reviewed_by: str = ""
    reviewed_on: date | None = None

    @property
    def is_reviewed(self) -> bool:
        """Whether somebody stands by name for having read it."""
        return bool(self.reviewed_by)


def translation_file(raw: Raw) -> TranslationFile:
    """Return the translation that a file's values describe; what could not be read is left out."""
    by = raw.get("reviewed by", "") if raw.get("status") == REVIEWED else ""
    return TranslationFile(
        raw.get("translation of", ""),
        raw.get("language", ""),
        tuple(_texts(raw.get("texts", ()), ("texts",))),
        tuple(_texts(raw.get("aside", ()), ("aside",))),
        by,
        raw.get("reviewed on") if by else None,
    )


def sheet_translations(raw: Raw) -> Mapping[str, tuple[TranslatedText, ...]]:
    """Return the texts that a sheet translates, by language."""
    return {
        language: tuple(_texts(items or (), ("translations", language)))
        for language, items in raw.get("translations", {}).items()
    }


def _texts(items: Iterable[Raw | None], above: Pointer) -> Iterator[TranslatedText]:
    for number, each in enumerate(items):
        if each and "at" in each and "of" in each:
            yield TranslatedText(
                place_of(each["at"]),
                each["of"],
                each.get("says", ""),
                (*above, number),
                each.get("source", ""),
                each.get("accepted", ""),
                each.get("in", ""),
            )
