"""The form of the words: findings, choices, acts, duties, kit, sources, and what they share."""

from __future__ import annotations

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
SOURCES = Key(NAMES, "The sources of what is said here")
ONE_OR_MORE = Either(NAME, NAMES)
CONDITION = Entries(ONE_OR_MORE)

EFFECT_KEYS = {
    "makes known": Key(Entries(ONE_OR_MORE), "Findings and the value, or values still possible"),
    "makes stale": Key(NAMES, "Findings that no longer count as known"),
}

VALUE = Record(
    "a value",
    {
        "label": Key(TEXT, "The words of the answer", required=True),
        "sign": Key(TEXT, "The sign by which it is told"),
        "sources": SOURCES,
    },
)

FINDING = Record(
    "a finding",
    {
        "title": Key(TEXT, "What is found, in a few words", required=True),
        "about": Key(one_of(*About), "What it is true of", required=True),
        "values": Key(Entries(VALUE, fewest=2), "The values it can have", required=True),
        "may change by itself": Key(YES_NO, "Whether any action may alter it"),
        "sources": SOURCES,
    },
)

POSITION = Record(
    "a position",
    {
        "label": Key(TEXT, "The position in a few words", required=True),
        "says": Key(TEXT, "What those who hold it do", required=True),
        "sources": Key(NAMES, "Who holds it", required=True),
    },
)

CHOICE = Record(
    "a choice",
    {
        "title": Key(TEXT, "What is to be chosen, in a few words", required=True),
        "positions": Key(Entries(POSITION, fewest=2), "The positions held", required=True),
        "suggested": Key(NAME, "The position suggested"),
        "because": Key(TEXT, "Why that position is suggested"),
        "chosen": Key(NAME, "The position the unit has set"),
    },
)

ACT = Record(
    "an act",
    {
        "title": Key(TEXT, "The act in a few words", required=True),
        **EFFECT_KEYS,
        "calls for help": Key(YES_NO, "Whether the act brings help"),
        "sources": SOURCES,
    },
)

DUTY = Record("a duty", {"title": Key(TEXT, "The duty as the team calls it", required=True)})

KIT = Record(
    "a kit item",
    {
        "title": Key(TEXT, "The item by its generic name", required=True),
        "amount": Key(TEXT, "How much is kept"),
        "why": Key(TEXT, "What it is for"),
        "sources": SOURCES,
    },
)

SOURCE = Record(
    "a source",
    {
        "cite": Key(TEXT, "The citation", required=True),
        "mark": Key(one_of(*Mark), "How far it was followed", required=True),
        "where": Key(TEXT, "The address at which it was read"),
        "note": Key(TEXT, "What to know about it"),
    },
)

CAUTION = Record(
    "a caution",
    {
        **{str(word): Key(TEXT, f"The harm, under the signal word {word}") for word in SignalWord},
        "instead": Key(TEXT, "The right thing to do", required=True),
        "guards": Key(NAME, "The act it guards; left out, its own step"),
        "sources": SOURCES,
    },
    exactly_one=tuple(SignalWord),
)
