"""The form of a translation: a file of its own, or the part of a local sheet."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.reading.form_approval import APPROVAL_KEYS
from chamberwise.engine.reading.shapes import (
    DIGEST,
    NAME,
    TEXT,
    Entries,
    Items,
    Key,
    Record,
    one_of,
)

UNREVIEWED, APPROVED = "unreviewed", "approved"

_TEXT_KEYS = {
    "at": Key(TEXT, N_("The place of the text"), required=True),
    "of": Key(DIGEST, N_("The digest of the text that was translated"), required=True),
    "source": Key(TEXT, N_("The text that was translated, to be read beside it")),
    "says": Key(TEXT, N_("The translation; left out, there is none yet")),
    "accepted": Key(TEXT, N_("Why a figure or a negation differs and is right nevertheless")),
}

TRANSLATED_TEXT = Record(N_("a translated text"), _TEXT_KEYS)

SHEET_TEXT = Record(
    N_("a text translated by a sheet"),
    {
        **_TEXT_KEYS,
        "says": Key(TEXT, N_("The translation"), required=True),
        "in": Key(NAME, N_("The pathway it stands in, where that is not the one below the sheet")),
    },
)

SHEET_TRANSLATIONS = Entries(Items(SHEET_TEXT))

TRANSLATION = Record(
    N_("a translation"),
    {
        "translation of": Key(
            NAME, N_("The pathway, `vocabulary`, or `drill-` and the pathway"), required=True
        ),
        "language": Key(NAME, N_("The code of the language, such as `de`"), required=True),
        "status": Key(one_of(UNREVIEWED, APPROVED), N_("Whether somebody stands for it"), True),
        "translated by": Key(Items(TEXT), N_("Who translated it, by office")),
        **APPROVAL_KEYS,
        "texts": Key(Items(TRANSLATED_TEXT), N_("The texts, by place"), required=True),
        "aside": Key(Items(TRANSLATED_TEXT), N_("Translations of texts that are there no more")),
    },
)
