"""The form of a pathway file and of the five kinds of step."""

from __future__ import annotations

from chamberwise.engine.model.pathway import Status
from chamberwise.engine.model.step import CANNOT_TELL
from chamberwise.engine.reading.form_approval import APPROVAL_KEYS
from chamberwise.engine.reading.form_vocabulary import WORD_TABLES
from chamberwise.engine.reading.form_words import (
    CAUTION,
    CONDITION,
    EFFECT_KEYS,
    NAMES,
    ONE_OR_MORE,
    SOURCES,
)
from chamberwise.engine.reading.shapes import (
    COUNT,
    DATE,
    DURATION,
    EDITION,
    NAME,
    TEXT,
    Either,
    Entries,
    Items,
    Key,
    Kinds,
    Record,
    one_of,
)

_EVERY_STEP = {
    "phase": Key(NAME, "The phase it belongs to", required=True),
    "why": Key(TEXT, "Why it is done or asked"),
    "short": Key(TEXT, "Wording for a chart"),
    "sources": SOURCES,
    "cautions": Key(Items(CAUTION), "Harms to guard against, each with the right thing to do"),
    "at most": Key(COUNT, "How often a walk may enter the step"),
    "after that": Key(NAME, "The step to go to instead once the bound is reached"),
    "work": Key(ONE_OR_MORE, "Calculations that are worked here, by name"),
    "plan": Key(Entries(TEXT), "What the table of cases says, by column"),
}
_GO_TO = Key(NAME, "The step that follows", required=True)

LONG_ANSWER = Record(
    "an answer",
    {
        "go to": _GO_TO,
        "means": Key(NAMES, "The values it stands for, when there are several"),
        "label": Key(TEXT, "The words of the answer, when not the value's own"),
    },
)

_DOES_OR_SAYS = ("does", "says")
_BOUND = ("at most", "after that")

LINE = Record(
    "a line",
    {
        "who": Key(NAME, "The duty", required=True),
        "does": Key(TEXT, "One instruction"),
        "says": Key(TEXT, "What is said aloud"),
        "act": Key(NAME, "The act of the vocabulary"),
        "sources": SOURCES,
    },
    exactly_one=_DOES_OR_SAYS,
)

OWED = Record(
    "something owed",
    {**LINE.keys, "when": Key(TEXT, "By when")},
    exactly_one=_DOES_OR_SAYS,
)

ROW = Record(
    "a row",
    {"when": Key(CONDITION, "What must surely be true", required=True), "go to": _GO_TO},
)

QUESTION = Record(
    "a question",
    {
        "ask": Key(NAME, "The finding or choice asked", required=True),
        "question": Key(TEXT, "The question as read aloud", required=True),
        "answers": Key(
            Entries(Either(NAME, LONG_ANSWER), words=(CANNOT_TELL,), fewest=2),
            "Each answer and where it leads",
            required=True,
        ),
        **_EVERY_STEP,
    },
    together=_BOUND,
)

ACTION = Record(
    "an action",
    {
        "do": Key(Items(LINE), "Who does or says what", required=True),
        "go to": _GO_TO,
        "needs": Key(NAMES, "Kit"),
        "choices": Key(NAMES, "Choices left to the unit that it depends on"),
        "time target": Key(DURATION, "A local target, never a benchmark"),
        **EFFECT_KEYS,
        **_EVERY_STEP,
    },
    together=_BOUND,
)

BRANCH = Record(
    "a branch",
    {
        "branch": Key(Items(ROW), "What leads where", required=True),
        "otherwise": Key(NAME, "Where to go when every row is surely false"),
        "not known": Key(NAME, "Where to go when what is known does not decide"),
        **_EVERY_STEP,
    },
    together=_BOUND,
)

HANDOVER = Record(
    "a handover",
    {
        "hand over to": Key(NAME, "The other pathway", required=True),
        "says": Key(TEXT, "What is said aloud at the handover", required=True),
        "on return": Key(Entries(NAME), "By outcome of the other pathway, the step to go on with"),
        **_EVERY_STEP,
    },
    together=_BOUND,
)

OUTCOME = Record(
    "an outcome",
    {
        "outcome": Key(TEXT, "How it ends", required=True),
        "owed": Key(Items(OWED), "What is owed afterwards"),
        **_EVERY_STEP,
    },
    together=_BOUND,
)

STEP = Kinds(
    {
        "ask": QUESTION,
        "do": ACTION,
        "branch": BRANCH,
        "hand over to": HANDOVER,
        "outcome": OUTCOME,
    }
)

CASES = Record(
    "the table of cases",
    {
        "over": Key(NAMES, "The findings combined", required=True),
        "assume": Key(Entries(NAME), "The first answer to everything else"),
        "asked again": Key(Entries(NAME), "The answer once a finding has gone stale"),
        "impossible": Key(
            Items(
                Record(
                    "an impossible combination",
                    {
                        "when": Key(CONDITION, "The combination", required=True),
                        "because": Key(TEXT, "Why it cannot be", required=True),
                    },
                )
            ),
            "Combinations that cannot be",
        ),
    },
)

WALL_CHART = Record(
    "the wall chart",
    {
        "use when": Key(TEXT, "The sign at which somebody points at the chart", required=True),
        "first": Key(NAMES, "The first actions, at most four"),
        "then": Key(NAMES, "The steps that follow, in order", required=True),
    },
)

ACCEPTANCE = Record(
    "an acceptance",
    {
        "check": Key(NAME, "The check's name", required=True),
        "at": Key(TEXT, "The place as `check` prints it", required=True),
        "reason": Key(TEXT, "Why it is accepted", required=True),
    },
)

PATHWAY = Record(
    "a pathway",
    {
        "pathway": Key(NAME, "The pathway's name", required=True),
        "title": Key(TEXT, "What it is called", required=True),
        "summary": Key(TEXT, "When it is for", required=True),
        "edition": Key(EDITION, "The edition", required=True),
        "status": Key(one_of(*Status), "Where it stands in its life", required=True),
        "authors": Key(Items(TEXT), "Who wrote it, by office", required=True),
        **APPROVAL_KEYS,
        "reviewed": Key(DATE, "When it was last reviewed", required=True),
        "review by": Key(DATE, "When it is next to be reviewed", required=True),
        "reason for change": Key(TEXT, "Why this edition was made, in a line"),
        "start": Key(NAME, "The first step", required=True),
        "phases": Key(Entries(TEXT), "The phases in order, each with its title", required=True),
        **WORD_TABLES,
        "wall chart": Key(WALL_CHART, "What the wall chart shows"),
        "cases": Key(CASES, "The table of cases"),
        "accepted": Key(Items(ACCEPTANCE), "Reported problems that are accepted, with a reason"),
        "steps": Key(Entries(STEP), "The steps, in reading order", required=True),
    },
)
