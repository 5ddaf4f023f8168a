"""The form of the drill files: a book of scenarios, what acts do to the truth, and phrases."""

from __future__ import annotations

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
    "a turn of the truth",
    {
        "becomes": Key(SETTINGS, "What is true from then on"),
        "when": Key(CONDITION, "Only while this is true"),
        "unless": Key(CONDITION, "Not while this is true"),
        "unless done": Key(NAMES, "Not where one of these acts was done"),
        "once done": Key(NAMES, "Only where one of these acts was done"),
        "since": Key(NAMES, "The acts after which it has to be done anew"),
        "percent": Key(COUNT, "In how many of a hundred; left out, always"),
        "shows": Key(TEXT, "What is then perceived, never what it means"),
        "lesson": Key(TEXT, "What the debrief says of it; it makes the act a wrong one here"),
        "sources": SOURCES,
    },
    only_with={"since": ("unless done", "once done")},
    fewest=1,
)

IN_TRUTH = Record(
    "what an act does to the truth",
    {
        "turns": Key(Items(TURN), "What changes, in order"),
        "only while": Key(CONDITION, "While what it can be done at all"),
        "otherwise": Key(TEXT, "What is seen when it cannot be done"),
    },
    together=("only while", "otherwise"),
    fewest=1,
)

WRONG_ACT = Record(
    "a wrong act",
    {
        "title": Key(TEXT, "The act in a few words", required=True),
        "harm": Key(TEXT, "Why it is never right", required=True),
        "counts as": Key(NAME, "The act that safety rules take it for"),
        "instead": Key(TEXT, "What is right", required=True),
        **EFFECT_KEYS,
        "sources": SOURCES,
    },
)

OTHER_ACT = Record(
    "another act",
    {"title": Key(TEXT, "The act in a few words", required=True), **EFFECT_KEYS},
)

SEEN = Record(
    "how a value looks",
    {
        "while": Key(CONDITION, "Only while this is true"),
        "unless done": Key(NAMES, "Not where one of these acts was done"),
        "shows": Key(TEXT, "What is perceived", required=True),
    },
)

TRUTH = Record(
    "what acts do to the truth",
    {
        "truth": Key(TEXT, "What the file lists", required=True),
        "wrong acts": Key(Entries(WRONG_ACT), "Acts that are never right"),
        "other acts": Key(Entries(OTHER_ACT), "Acts that no pathway asks for, and that do no harm"),
        "in truth": Key(Entries(IN_TRUTH), "By act: what it changes", required=True),
        "seen as": Key(
            Entries(Entries(Items(SEEN))),
            "By finding and value: how it looks where its sign does not fit; the first that holds",
        ),
    },
)

PHRASES = Record(
    "a list of phrases",
    {
        "phrases": Key(TEXT, "What the file lists", required=True),
        "words": Key(Entries(TEXT), "Words and abbreviations that stand for others"),
        "acts": Key(Entries(TEXTS), "By act: how people say it", required=True),
        "looks": Key(Entries(TEXTS), "By finding: how people say they look", required=True),
    },
)

REPLY = Record(
    "a reply",
    {
        "title": Key(TEXT, "The act in a few words, where no pathway has it"),
        "becomes": Key(SETTINGS, "What is true from then on"),
        "shows": Key(TEXT, "What is then perceived"),
        "said as": Key(TEXTS, "How people say it, where no pathway has it"),
    },
)

INJECT = Record(
    "an inject",
    {
        "title": Key(TEXT, "What a debrief calls it", required=True),
        "at": Key(DURATION, "How long after the first cue"),
        "after": Key(NAME, "The act after which it happens"),
        "when": Key(CONDITION, "Only while this is true"),
        "shows": Key(TEXT, "What is perceived", required=True),
        "becomes": Key(SETTINGS, "What is true from then on"),
        "replies": Key(Entries(REPLY), "What answers it, by act", required=True),
    },
    exactly_one=("at", "after"),
)

OPENING = Record(
    "an opening",
    {
        "weight": Key(COUNT, "How often, out of all openings", required=True),
        "so far": Key(TEXT, "What is going on", required=True),
        "known": Key(SETTINGS, "What the team knows from the start"),
        "truth": Key(WEIGHTS, "By finding: its values and how often"),
        "cues": Key(TEXTS, "What is perceived at first; one is drawn", required=True),
        "calls": Key(Entries(TEXT), "By act: what it is called at this stage"),
        "sources": SOURCES,
    },
)

CRITICAL = Record(
    "a critical act",
    {
        "act": Key(NAME, "The act", required=True),
        "soft": Key(DURATION, "By when, a local target"),
        "hard": Key(DURATION, "By when at the latest, a local target"),
        "once": Key(NAME, "The act from which time counts; left out, the first cue"),
        "why": Key(TEXT, "Why it must not be left out", required=True),
        "sources": SOURCES,
    },
    together=("soft", "hard"),
)

ORDER = Record(
    "an order",
    {
        "first": Key(NAME, "The act that comes first", required=True),
        "then": Key(NAME, "The act that comes after it", required=True),
        "harmless": Key(YES_NO, "Whether the other order does no harm"),
    },
)

TASK = Record(
    "a task",
    {
        "within": Key(DURATION, "By when, a local target", required=True),
        "who": Key(NAME, "The duty", required=True),
        "or": Key(NAMES, "Who does it where that duty is not filled, in order"),
        "does": Key(TEXT, "The task in a few words", required=True),
        "act": Key(NAME, "The act it is, if any"),
        "request": Key(YES_NO, "Whether it is asked for, read back and reported done"),
    },
)

SCENARIO = Record(
    "a scenario",
    {
        "title": Key(TEXT, "What it is called; never what happens in it", required=True),
        "opening": Key(NAME, "The opening it is drawn from", required=True),
        "brief": Key(TEXTS, "What the team knows before"),
        "so far": Key(TEXT, "What is going on"),
        "truth": Key(SETTINGS, "What is true, beyond what is drawn"),
        "cues": Key(TEXTS, "What is perceived at first"),
        "decoys": Key(Items(TEXT, fewest=0), "What looks alike and is seen before it"),
        "injects": Key(Items(NAME, fewest=0), "What happens meanwhile"),
        "begins at": Key(NAME, "The step up to which all was done rightly"),
        "ends at": Key(NAMES, "The steps at which it ends"),
        "lasts": Key(DURATION, "How long at most"),
    },
)

DRILL = Record(
    "a book of drills",
    {
        "drill of": Key(NAME, "The pathway", required=True),
        "triggers": Key(TEXTS, "The words that say what it is", required=True),
        "announce": Key(NAME, "The act of saying them", required=True),
        "is": Key(TEXT, "What it is, in a few words", required=True),
        "could be": Key(TEXTS, "What it might be taken for, in a few words", required=True),
        "lasts": Key(DURATION, "How long a drill lasts at most", required=True),
        "ends at": Key(NAMES, "The steps at which a drill ends", required=True),
        "brief": Key(Entries(TEXTS), "What the team knows before; one of each", required=True),
        "truth": Key(WEIGHTS, "By finding: its values and how often"),
        "at a glance": Key(NAMES, "Findings that are seen without looking"),
        "unseen": Key(
            Items(
                Record(
                    "what cannot be seen",
                    {
                        "while": Key(CONDITION, "While this is true", required=True),
                        "findings": Key(NAMES, "These cannot be told", required=True),
                    },
                )
            ),
            "What cannot be told while",
        ),
        "openings": Key(Entries(OPENING), "The stages at which it happens", required=True),
        "decoys": Key(TEXTS, "What looks alike"),
        "injects": Key(Entries(INJECT), "What may happen meanwhile"),
        "critical": Key(Items(CRITICAL), "What must not be left out", required=True),
        "orders": Key(Items(ORDER), "What belongs before what"),
        "tasks": Key(Entries(TASK), "Who does what in the first minute"),
        "reader": Key(TEXTS, "What the reader of the chart reads, line by line"),
        "scenarios": Key(Entries(SCENARIO), "Scenarios written by hand"),
    },
)
