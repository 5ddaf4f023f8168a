"""The form of the drill files: a book of scenarios, what acts do to the truth, and phrases."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.reading.form_words import CONDITION, EFFECT_KEYS, NAMES, SOURCES
from chamberwise.engine.reading.shapes import (
    COUNT,
    DURATION,
    NAME,
    TEXT,
    YES_NO,
    Entries,
    Items,
    Key,
    Record,
)

SETTINGS = Entries(NAME)
WEIGHTS = Entries(Entries(COUNT))
TEXTS = Items(TEXT)

TURN = Record(
    N_("a turn of the truth"),
    {
        "becomes": Key(SETTINGS, N_("What is true from then on")),
        "when": Key(CONDITION, N_("Only while this is true")),
        "unless": Key(CONDITION, N_("Not while this is true")),
        "unless done": Key(NAMES, N_("Not where one of these acts was done")),
        "once done": Key(NAMES, N_("Only where one of these acts was done")),
        "since": Key(NAMES, N_("The acts after which it has to be done anew")),
        "percent": Key(COUNT, N_("In how many of a hundred; left out, always")),
        "shows": Key(TEXT, N_("What is then perceived, never what it means")),
        "lesson": Key(TEXT, N_("What the debrief says of it; it makes the act a wrong one here")),
        "sources": SOURCES,
    },
    only_with={"since": ("unless done", "once done")},
    fewest=1,
)

IN_TRUTH = Record(
    N_("what an act does to the truth"),
    {
        "turns": Key(Items(TURN), N_("What changes, in order")),
        "only while": Key(CONDITION, N_("While what it can be done at all")),
        "otherwise": Key(TEXT, N_("What is seen when it cannot be done")),
    },
    together=("only while", "otherwise"),
    fewest=1,
)

WRONG_ACT = Record(
    N_("a wrong act"),
    {
        "title": Key(TEXT, N_("The act in a few words"), required=True),
        "harm": Key(TEXT, N_("Why it is never right"), required=True),
        "counts as": Key(NAME, N_("The act that safety rules take it for")),
        "instead": Key(TEXT, N_("What is right"), required=True),
        **EFFECT_KEYS,
        "sources": SOURCES,
    },
)

OTHER_ACT = Record(
    N_("another act"),
    {"title": Key(TEXT, N_("The act in a few words"), required=True), **EFFECT_KEYS},
)

SEEN = Record(
    N_("how a value looks"),
    {
        "while": Key(CONDITION, N_("Only while this is true")),
        "unless done": Key(NAMES, N_("Not where one of these acts was done")),
        "shows": Key(TEXT, N_("What is perceived"), required=True),
    },
)

TRUTH = Record(
    N_("what acts do to the truth"),
    {
        "truth": Key(TEXT, N_("What the file lists"), required=True),
        "wrong acts": Key(Entries(WRONG_ACT), N_("Acts that are never right")),
        "other acts": Key(
            Entries(OTHER_ACT), N_("Acts that no pathway asks for, and that do no harm")
        ),
        "in truth": Key(Entries(IN_TRUTH), N_("By act: what it changes"), required=True),
        "seen as": Key(
            Entries(Entries(Items(SEEN))),
            N_(
                "By finding and value: how it looks where its sign does not fit; "
                "the first that holds"
            ),
        ),
    },
)

PHRASES = Record(
    N_("a list of phrases"),
    {
        "phrases": Key(TEXT, N_("What the file lists"), required=True),
        "words": Key(Entries(TEXT), N_("Words and abbreviations that stand for others")),
        "like": Key(TEXTS, N_("Words that often mean the same, each group a text")),
        "acts": Key(Entries(TEXTS), N_("By act: how people say it"), required=True),
        "looks": Key(Entries(TEXTS), N_("By finding: how people say they look"), required=True),
    },
)

REPLY = Record(
    N_("a reply"),
    {
        "title": Key(TEXT, N_("The act in a few words, where no pathway has it")),
        "becomes": Key(SETTINGS, N_("What is true from then on")),
        "shows": Key(TEXT, N_("What is then perceived")),
        "said as": Key(TEXTS, N_("How people say it, where no pathway has it")),
    },
)

INJECT = Record(
    N_("an inject"),
    {
        "title": Key(TEXT, N_("What a debrief calls it"), required=True),
        "at": Key(DURATION, N_("How long after the first cue")),
        "after": Key(NAME, N_("The act after which it happens")),
        "when": Key(CONDITION, N_("Only while this is true")),
        "shows": Key(TEXT, N_("What is perceived"), required=True),
        "becomes": Key(SETTINGS, N_("What is true from then on")),
        "replies": Key(Entries(REPLY), N_("What answers it, by act"), required=True),
    },
    exactly_one=("at", "after"),
)

OPENING = Record(
    N_("an opening"),
    {
        "weight": Key(COUNT, N_("How often, out of all openings"), required=True),
        "so far": Key(TEXT, N_("What is going on"), required=True),
        "known": Key(SETTINGS, N_("What the team knows from the start")),
        "truth": Key(WEIGHTS, N_("By finding: its values and how often")),
        "cues": Key(TEXTS, N_("What is perceived at first; one is drawn"), required=True),
        "calls": Key(Entries(TEXT), N_("By act: what it is called at this stage")),
        "sources": SOURCES,
    },
)

CRITICAL = Record(
    N_("a critical act"),
    {
        "act": Key(NAME, N_("The act"), required=True),
        "soft": Key(DURATION, N_("By when, a local target")),
        "hard": Key(DURATION, N_("By when at the latest, a local target")),
        "once": Key(NAME, N_("The act from which time counts; left out, the first cue")),
        "why": Key(TEXT, N_("Why it must not be left out"), required=True),
        "sources": SOURCES,
    },
    together=("soft", "hard"),
)

ORDER = Record(
    N_("an order"),
    {
        "first": Key(NAME, N_("The act that comes first"), required=True),
        "then": Key(NAME, N_("The act that comes after it"), required=True),
        "harmless": Key(YES_NO, N_("Whether the other order does no harm")),
    },
)

TASK = Record(
    N_("a task"),
    {
        "within": Key(DURATION, N_("By when, a local target"), required=True),
        "who": Key(NAME, N_("The duty"), required=True),
        "or": Key(NAMES, N_("Who does it where that duty is not filled, in order")),
        "does": Key(TEXT, N_("The task in a few words"), required=True),
        "act": Key(NAME, N_("The act it is, if any")),
        "request": Key(YES_NO, N_("Whether it is asked for, read back and reported done")),
    },
)

SCENARIO = Record(
    N_("a scenario"),
    {
        "title": Key(TEXT, N_("What it is called; never what happens in it"), required=True),
        "opening": Key(NAME, N_("The opening it is drawn from"), required=True),
        "brief": Key(TEXTS, N_("What the team knows before")),
        "so far": Key(TEXT, N_("What is going on")),
        "truth": Key(SETTINGS, N_("What is true, beyond what is drawn")),
        "cues": Key(TEXTS, N_("What is perceived at first")),
        "decoys": Key(Items(TEXT, fewest=0), N_("What looks alike and is seen before it")),
        "injects": Key(Items(NAME, fewest=0), N_("What happens meanwhile")),
        "begins at": Key(NAME, N_("The step up to which all was done rightly")),
        "ends at": Key(NAMES, N_("The steps at which it ends")),
        "lasts": Key(DURATION, N_("How long at most")),
    },
)

DRILL = Record(
    N_("a book of drills"),
    {
        "drill of": Key(NAME, N_("The pathway"), required=True),
        "triggers": Key(TEXTS, N_("The words that say what it is"), required=True),
        "announce": Key(NAME, N_("The act of saying them"), required=True),
        "is": Key(TEXT, N_("What it is, in a few words"), required=True),
        "could be": Key(TEXTS, N_("What it might be taken for, in a few words"), required=True),
        "lasts": Key(DURATION, N_("How long a drill lasts at most"), required=True),
        "ends at": Key(NAMES, N_("The steps at which a drill ends"), required=True),
        "brief": Key(Entries(TEXTS), N_("What the team knows before; one of each"), required=True),
        "truth": Key(WEIGHTS, N_("By finding: its values and how often")),
        "at a glance": Key(NAMES, N_("Findings that are seen without looking")),
        "unseen": Key(
            Items(
                Record(
                    N_("what cannot be seen"),
                    {
                        "while": Key(CONDITION, N_("While this is true"), required=True),
                        "findings": Key(NAMES, N_("These cannot be told"), required=True),
                    },
                )
            ),
            N_("What cannot be told while"),
        ),
        "openings": Key(Entries(OPENING), N_("The stages at which it happens"), required=True),
        "decoys": Key(TEXTS, N_("What looks alike")),
        "injects": Key(Entries(INJECT), N_("What may happen meanwhile")),
        "critical": Key(Items(CRITICAL), N_("What must not be left out"), required=True),
        "orders": Key(Items(ORDER), N_("What belongs before what")),
        "tasks": Key(Entries(TASK), N_("Who does what in the first minute")),
        "reader": Key(TEXTS, N_("What the reader of the chart reads, line by line")),
        "scenarios": Key(Entries(SCENARIO), N_("Scenarios written by hand")),
    },
)
