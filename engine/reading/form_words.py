"""The form of the words: findings, choices, acts, duties, kit, sources, and what they share."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.step import SignalWord
from chamberwise.engine.model.words import About, Mark
from chamberwise.engine.reading.shapes import (
    NAME,
    TEXT,
    YES_NO,
    Either,
    Entries,
    Items,
    Key,
    Record,
    one_of,
)

NAMES = Items(NAME)
SOURCES = Key(NAMES, N_("The sources of what is said here"))
ONE_OR_MORE = Either(NAME, NAMES)
CONDITION = Entries(ONE_OR_MORE)

EFFECT_KEYS = {
    "makes known": Key(
        Entries(ONE_OR_MORE), N_("Findings and the value, or values still possible")
    ),
    "makes stale": Key(NAMES, N_("Findings that no longer count as known")),
}

VALUE = Record(
    N_("a value"),
    {
        "label": Key(TEXT, N_("The words of the answer"), required=True),
        "sign": Key(TEXT, N_("The sign by which it is told")),
        "sources": SOURCES,
    },
)

FINDING = Record(
    N_("a finding"),
    {
        "title": Key(TEXT, N_("What is found, in a few words"), required=True),
        "about": Key(one_of(*About), N_("What it is true of"), required=True),
        "values": Key(Entries(VALUE, fewest=2), N_("The values it can have"), required=True),
        "may change by itself": Key(YES_NO, N_("Whether any action may alter it")),
        "sources": SOURCES,
    },
)

POSITION = Record(
    N_("a position"),
    {
        "label": Key(TEXT, N_("The position in a few words"), required=True),
        "says": Key(TEXT, N_("What those who hold it do"), required=True),
        "sources": Key(NAMES, N_("Who holds it"), required=True),
    },
)

CHOICE = Record(
    N_("a choice"),
    {
        "title": Key(TEXT, N_("What is to be chosen, in a few words"), required=True),
        "positions": Key(Entries(POSITION, fewest=2), N_("The positions held"), required=True),
        "suggested": Key(NAME, N_("The position suggested")),
        "because": Key(TEXT, N_("Why that position is suggested")),
        "chosen": Key(NAME, N_("The position the unit has set")),
    },
)

ACT = Record(
    N_("an act"),
    {
        "title": Key(TEXT, N_("The act in a few words"), required=True),
        **EFFECT_KEYS,
        "calls for help": Key(YES_NO, N_("Whether the act brings help")),
        "sources": SOURCES,
    },
)

DUTY = Record(
    N_("a duty"), {"title": Key(TEXT, N_("The duty as the team calls it"), required=True)}
)

KIT = Record(
    N_("a kit item"),
    {
        "title": Key(TEXT, N_("The item by its generic name"), required=True),
        "amount": Key(TEXT, N_("How much is kept")),
        "why": Key(TEXT, N_("What it is for")),
        "sources": SOURCES,
    },
)

SOURCE = Record(
    N_("a source"),
    {
        "cite": Key(TEXT, N_("The citation"), required=True),
        "mark": Key(one_of(*Mark), N_("How far it was followed"), required=True),
        "where": Key(TEXT, N_("The address at which it was read")),
        "note": Key(TEXT, N_("What to know about it")),
    },
)

_HARMS = {
    SignalWord.DANGER: N_("The harm, under the signal word danger"),
    SignalWord.WARNING: N_("The harm, under the signal word warning"),
    SignalWord.CAUTION: N_("The harm, under the signal word caution"),
    SignalWord.NOTICE: N_("The harm, under the signal word notice"),
}

CAUTION = Record(
    N_("a caution"),
    {
        **{str(word): Key(TEXT, harm) for word, harm in _HARMS.items()},
        "instead": Key(TEXT, N_("The right thing to do"), required=True),
        "guards": Key(NAME, N_("The act it guards; left out, its own step")),
        "sources": SOURCES,
    },
    exactly_one=tuple(SignalWord),
)
