"""The form of a translation: a file of its own, or the part of a local sheet."""

from __future__ import annotations

from chamberwise.engine.reading.shapes import (
    DATE,
    DIGEST,
    NAME,
    TEXT,
    Entries,
    Items,
    Key,
    Record,
    one_of,
)

UNREVIEWED, REVIEWED = "unreviewed", "reviewed"

_TEXT_KEYS = {
    "at": Key(TEXT, "The place of the text", required=True),
    "of": Key(DIGEST, "The digest of the text that was translated", required=True),
    "source": Key(TEXT, "The text that was translated, to be read beside it"),
    "says": Key(TEXT, "The translation; left out, there is none yet"),
    "accepted": Key(TEXT, "Why a figure or a negation differs and is right nevertheless"),
}

TRANSLATED_TEXT = Record("a translated text", _TEXT_KEYS)

SHEET_TEXT = Record(
    "a text translated by a sheet",
    {
        **_TEXT_KEYS,
        "says": Key(TEXT, "The translation", required=True),
        "in": Key(NAME, "The pathway it stands in, where that is not the one below the sheet"),
    },
)

SHEET_TRANSLATIONS = Entries(Items(SHEET_TEXT))

TRANSLATION = Record(
    "a translation",
    {
        "translation of": Key(NAME, "The pathway, or `vocabulary`", required=True),
        "language": Key(NAME, "The code of the language, such as `de`", required=True),
        "status": Key(one_of(UNREVIEWED, REVIEWED), "Whether a clinician has read it", True),
        "reviewed by": Key(TEXT, "Who has read it against the source, by office"),
        "reviewed on": Key(DATE, "When"),
        "texts": Key(Items(TRANSLATED_TEXT), "The texts, by place", required=True),
        "aside": Key(Items(TRANSLATED_TEXT), "Translations of texts that are there no more"),
    },
    together=("reviewed by", "reviewed on"),
)
