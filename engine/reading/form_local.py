"""The form of a local sheet: what one unit sets, rewords and changes over one pathway."""

from __future__ import annotations

from chamberwise.engine.model.pathway import Status
from chamberwise.engine.reading.form_approval import APPROVAL_KEYS
from chamberwise.engine.reading.form_translation import SHEET_TRANSLATIONS
from chamberwise.engine.reading.shapes import (
    DATE,
    DIGEST,
    DURATION,
    EDITION,
    NAME,
    TEXT,
    Anything,
    Entries,
    Items,
    Key,
    Kinds,
    Record,
    one_of,
)

_EXPECTS = Key(Anything(), "What stands there now, or its digest")
_IN = Key(NAME, "The pathway it stands in, where that is not the one below the sheet")
_BECAUSE = Key(TEXT, "Why", required=True)

OVER = Record(
    "what the sheet lies over",
    {
        "pathway": Key(NAME, "The pathway", required=True),
        "edition": Key(EDITION, "The edition of the pathway it was written over", required=True),
        "digest": Key(DIGEST, "The digest of what it was written over", required=True),
    },
)

PHONE = Record(
    "a phone",
    {
        "number": Key(TEXT, "The number", required=True),
        "hours": Key(TEXT, "When it is answered", required=True),
        "outside hours": Key(TEXT, "What is rung at other times"),
    },
)

PLACE = Record(
    "a place",
    {
        "title": Key(TEXT, "The place as the team calls it", required=True),
        "walk": Key(DURATION, "How long fetching something from there takes", required=True),
    },
)

PRODUCT = Record(
    "a product",
    {
        "product": Key(TEXT, "What the unit uses", required=True),
        "place": Key(NAME, "Where it lies", required=True),
        "shelf": Key(TEXT, "The shelf or drawer"),
        "stock": Key(TEXT, "How much is kept"),
    },
)

MACHINE = Record(
    "the machine",
    {
        "title": Key(TEXT, "The machine as the team calls it", required=True),
        "pages": Key(Entries(TEXT), "By act, the page or button that is meant"),
    },
)

CHOSEN = Record(
    "a choice made",
    {
        "chosen": Key(NAME, "The position the unit has set", required=True),
        "because": _BECAUSE,
        "expects": _EXPECTS,
    },
)

TARGET = Record(
    "a time target",
    {
        "within": Key(DURATION, "By when the step should be done", required=True),
        "method": Key(TEXT, "How the unit came to it", required=True),
        "expects": _EXPECTS,
        "in": _IN,
    },
)

REWORDING = Record(
    "a wording",
    {
        "at": Key(TEXT, "The place of the text", required=True),
        "expects": _EXPECTS,
        "says": Key(TEXT, "The unit's own words", required=True),
        "in": _IN,
    },
)

CHANGE = Kinds(
    {
        "change": Record(
            "a change",
            {
                "change": Key(TEXT, "The place of what is changed", required=True),
                "expects": _EXPECTS,
                "to": Key(Anything(), "What stands there instead", required=True),
                "because": _BECAUSE,
                "in": _IN,
            },
        ),
        "add": Record(
            "an addition",
            {
                "add": Key(TEXT, "The place at which something new will stand", required=True),
                "after": Key(NAME, "The name it follows; left out, it stands last"),
                "as": Key(Anything(), "What is added", required=True),
                "because": _BECAUSE,
                "in": _IN,
            },
        ),
        "remove": Record(
            "a removal",
            {
                "remove": Key(TEXT, "The place of what is taken away", required=True),
                "expects": _EXPECTS,
                "go to": Key(NAME, "For a step: where every arrow leads that led to it"),
                "because": _BECAUSE,
                "in": _IN,
            },
        ),
    },
    name="an operation",
)

SWITCHED_OFF = Record(
    "a rule switched off",
    {
        "by": Key(TEXT, "Who decided it, by name and office", required=True),
        "because": _BECAUSE,
        "on": Key(DATE, "When it was decided", required=True),
    },
)

LOCAL_SHEET = Record(
    "a local sheet",
    {
        "local sheet": Key(NAME, "The sheet's name", required=True),
        "unit": Key(TEXT, "The unit whose sheet it is", required=True),
        "over": Key(OVER, "The pathway it lies over, and what that said", required=True),
        "edition": Key(EDITION, "The edition of the sheet", required=True),
        "status": Key(one_of(*Status), "Where it stands in its life", required=True),
        "authors": Key(Items(TEXT), "Who wrote it, by office", required=True),
        **APPROVAL_KEYS,
        "reviewed": Key(DATE, "When it was last reviewed", required=True),
        "review by": Key(DATE, "When it is next to be reviewed", required=True),
        "reason for change": Key(TEXT, "Why this edition was made, in a line", required=True),
        "phones": Key(Entries(PHONE), "By act that calls for help, how it is called"),
        "places": Key(Entries(PLACE), "Where things lie"),
        "products": Key(Entries(PRODUCT), "By kit item, what the unit uses"),
        "machine": Key(MACHINE, "The machine and the names of its pages"),
        "choices": Key(Entries(CHOSEN), "By choice, the position the unit has set"),
        "time targets": Key(Entries(TARGET), "By step, by when it should be done"),
        "wording": Key(Items(REWORDING), "Texts in the unit's own words"),
        "changes": Key(Items(CHANGE), "Steps and words added, changed or removed"),
        "switched off": Key(Entries(SWITCHED_OFF), "Safety rules that do not bind the unit"),
        "translations": Key(SHEET_TRANSLATIONS, "By language, texts said in it"),
    },
)
