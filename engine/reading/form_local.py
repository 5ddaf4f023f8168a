"""The form of a local sheet: what one unit sets, rewords and changes over one pathway."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
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

_EXPECTS = Key(Anything(), N_("What stands there now, or its digest"))
_IN = Key(NAME, N_("The pathway it stands in, where that is not the one below the sheet"))
_BECAUSE = Key(TEXT, N_("Why"), required=True)

OVER = Record(
    N_("what the sheet lies over"),
    {
        "pathway": Key(NAME, N_("The pathway"), required=True),
        "edition": Key(
            EDITION, N_("The edition of the pathway it was written over"), required=True
        ),
        "digest": Key(DIGEST, N_("The digest of what it was written over"), required=True),
    },
)

PHONE = Record(
    N_("a phone"),
    {
        "number": Key(TEXT, N_("The number"), required=True),
        "hours": Key(TEXT, N_("When it is answered"), required=True),
        "outside hours": Key(TEXT, N_("What is rung at other times")),
    },
)

PLACE = Record(
    N_("a place"),
    {
        "title": Key(TEXT, N_("The place as the team calls it"), required=True),
        "walk": Key(DURATION, N_("How long fetching something from there takes"), required=True),
    },
)

PRODUCT = Record(
    N_("a product"),
    {
        "product": Key(TEXT, N_("What the unit uses"), required=True),
        "place": Key(NAME, N_("Where it lies"), required=True),
        "shelf": Key(TEXT, N_("The shelf or drawer")),
        "stock": Key(TEXT, N_("How much is kept")),
    },
)

MACHINE = Record(
    N_("the machine"),
    {
        "title": Key(TEXT, N_("The machine as the team calls it"), required=True),
        "pages": Key(Entries(TEXT), N_("By act, the page or button that is meant")),
    },
)

CHOSEN = Record(
    N_("a choice made"),
    {
        "chosen": Key(NAME, N_("The position the unit has set"), required=True),
        "because": _BECAUSE,
        "expects": _EXPECTS,
    },
)

TARGET = Record(
    N_("a time target"),
    {
        "within": Key(DURATION, N_("By when the step should be done"), required=True),
        "method": Key(TEXT, N_("How the unit came to it"), required=True),
        "expects": _EXPECTS,
        "in": _IN,
    },
)

REWORDING = Record(
    N_("a wording"),
    {
        "at": Key(TEXT, N_("The place of the text"), required=True),
        "expects": _EXPECTS,
        "says": Key(TEXT, N_("The unit's own words"), required=True),
        "in": _IN,
    },
)

CHANGE = Kinds(
    {
        "change": Record(
            N_("a change"),
            {
                "change": Key(TEXT, N_("The place of what is changed"), required=True),
                "expects": _EXPECTS,
                "to": Key(Anything(), N_("What stands there instead"), required=True),
                "because": _BECAUSE,
                "in": _IN,
            },
        ),
        "add": Record(
            N_("an addition"),
            {
                "add": Key(TEXT, N_("The place at which something new will stand"), required=True),
                "after": Key(NAME, N_("The name it follows; left out, it stands last")),
                "as": Key(Anything(), N_("What is added"), required=True),
                "because": _BECAUSE,
                "in": _IN,
            },
        ),
        "remove": Record(
            N_("a removal"),
            {
                "remove": Key(TEXT, N_("The place of what is taken away"), required=True),
                "expects": _EXPECTS,
                "go to": Key(NAME, N_("For a step: where every arrow leads that led to it")),
                "because": _BECAUSE,
                "in": _IN,
            },
        ),
    },
    name=N_("an operation"),
    noun=N_("operation"),
)

SWITCHED_OFF = Record(
    N_("a rule switched off"),
    {
        "by": Key(TEXT, N_("Who decided it, by name and office"), required=True),
        "because": _BECAUSE,
        "on": Key(DATE, N_("When it was decided"), required=True),
    },
)

LOCAL_SHEET = Record(
    N_("a local sheet"),
    {
        "local sheet": Key(NAME, N_("The sheet's name"), required=True),
        "unit": Key(TEXT, N_("The unit whose sheet it is"), required=True),
        "over": Key(OVER, N_("The pathway it lies over, and what that said"), required=True),
        "edition": Key(EDITION, N_("The edition of the sheet"), required=True),
        "status": Key(one_of(*Status), N_("Where it stands in its life"), required=True),
        "authors": Key(Items(TEXT), N_("Who wrote it, by office"), required=True),
        **APPROVAL_KEYS,
        "reviewed": Key(DATE, N_("When it was last reviewed"), required=True),
        "review by": Key(DATE, N_("When it is next to be reviewed"), required=True),
        "reason for change": Key(TEXT, N_("Why this edition was made, in a line"), required=True),
        "phones": Key(Entries(PHONE), N_("By act that calls for help, how it is called")),
        "places": Key(Entries(PLACE), N_("Where things lie")),
        "products": Key(Entries(PRODUCT), N_("By kit item, what the unit uses")),
        "machine": Key(MACHINE, N_("The machine and the names of its pages")),
        "choices": Key(Entries(CHOSEN), N_("By choice, the position the unit has set")),
        "time targets": Key(Entries(TARGET), N_("By step, by when it should be done")),
        "wording": Key(Items(REWORDING), N_("Texts in the unit's own words")),
        "changes": Key(Items(CHANGE), N_("Steps and words added, changed or removed")),
        "switched off": Key(Entries(SWITCHED_OFF), N_("Safety rules that do not bind the unit")),
        "translations": Key(SHEET_TRANSLATIONS, N_("By language, texts said in it")),
    },
)
