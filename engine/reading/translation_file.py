"""A translation as read: texts by place, each with the digest of what it was made of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.pathway import Seal
from chamberwise.engine.reading.build_pathway import seal
from chamberwise.engine.reading.build_values import Raw, names
from chamberwise.engine.reading.form_translation import APPROVED
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
    translators: tuple[str, ...] = ()
    is_called_approved: bool = False
    """What its status says; `approval.translations` tells whether that stands."""
    approved_by: str = ""
    approved_on: date | None = None
    seal: Seal | None = None


def translation_file(raw: Raw) -> TranslationFile:
    """Return the translation that a file's values describe; what could not be read is left out."""
    return TranslationFile(
        raw.get("translation of", ""),
        raw.get("language", ""),
        tuple(_texts(raw.get("texts", ()), ("texts",))),
        tuple(_texts(raw.get("aside", ()), ("aside",))),
        names(raw, "translated by"),
        raw.get("status") == APPROVED,
        raw.get("approved by", ""),
        raw.get("approved on"),
        seal(raw),
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
