"""The form of a pathway file and of the five kinds of step."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
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
    "phase": Key(NAME, N_("The phase it belongs to"), required=True),
    "why": Key(TEXT, N_("Why it is done or asked")),
    "short": Key(TEXT, N_("Wording for a chart")),
    "sources": SOURCES,
    "cautions": Key(Items(CAUTION), N_("Harms to guard against, each with the right thing to do")),
    "at most": Key(COUNT, N_("How often a walk may enter the step")),
    "after that": Key(NAME, N_("The step to go to instead once the bound is reached")),
    "work": Key(ONE_OR_MORE, N_("Calculations that are worked here, by name")),
    "plan": Key(Entries(TEXT), N_("What the table of cases says, by column")),
}
_GO_TO = Key(NAME, N_("The step that follows"), required=True)

LONG_ANSWER = Record(
    N_("an answer"),
    {
        "go to": _GO_TO,
        "means": Key(NAMES, N_("The values it stands for, when there are several")),
        "label": Key(TEXT, N_("The words of the answer, when not the value's own")),
    },
)

_DOES_OR_SAYS = ("does", "says")
_BOUND = ("at most", "after that")

LINE = Record(
    N_("a line"),
    {
        "who": Key(NAME, N_("The duty"), required=True),
        "does": Key(TEXT, N_("One instruction")),
        "says": Key(TEXT, N_("What is said aloud")),
        "act": Key(NAME, N_("The act of the vocabulary")),
        "sources": SOURCES,
    },
    exactly_one=_DOES_OR_SAYS,
)

OWED = Record(
    N_("something owed"),
    {**LINE.keys, "when": Key(TEXT, N_("By when"))},
    exactly_one=_DOES_OR_SAYS,
)

ROW = Record(
    N_("a row"),
    {"when": Key(CONDITION, N_("What must surely be true"), required=True), "go to": _GO_TO},
)

QUESTION = Record(
    N_("a question"),
    {
        "ask": Key(NAME, N_("The finding or choice asked"), required=True),
        "question": Key(TEXT, N_("The question as read aloud"), required=True),
        "answers": Key(
            Entries(Either(NAME, LONG_ANSWER), words=(CANNOT_TELL,), fewest=2),
            N_("Each answer and where it leads"),
            required=True,
        ),
        **_EVERY_STEP,
    },
    together=_BOUND,
)

ACTION = Record(
    N_("an action"),
    {
        "do": Key(Items(LINE), N_("Who does or says what"), required=True),
        "go to": _GO_TO,
        "needs": Key(NAMES, N_("Kit")),
        "choices": Key(NAMES, N_("Choices left to the unit that it depends on")),
        "time target": Key(DURATION, N_("A local target, never a benchmark")),
        **EFFECT_KEYS,
        **_EVERY_STEP,
    },
    together=_BOUND,
)

BRANCH = Record(
    N_("a branch"),
    {
        "branch": Key(Items(ROW), N_("What leads where"), required=True),
        "otherwise": Key(NAME, N_("Where to go when every row is surely false")),
        "not known": Key(NAME, N_("Where to go when what is known does not decide")),
        **_EVERY_STEP,
    },
    together=_BOUND,
)

HANDOVER = Record(
    N_("a handover"),
    {
        "hand over to": Key(NAME, N_("The other pathway"), required=True),
        "says": Key(TEXT, N_("What is said aloud at the handover"), required=True),
        "on return": Key(
            Entries(NAME), N_("By outcome of the other pathway, the step to go on with")
        ),
        **_EVERY_STEP,
    },
    together=_BOUND,
)

OUTCOME = Record(
    N_("an outcome"),
    {
        "outcome": Key(TEXT, N_("How it ends"), required=True),
        "owed": Key(Items(OWED), N_("What is owed afterwards")),
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
    N_("the table of cases"),
    {
        "over": Key(NAMES, N_("The findings combined"), required=True),
        "assume": Key(Entries(NAME), N_("The first answer to everything else")),
        "asked again": Key(Entries(NAME), N_("The answer once a finding has gone stale")),
        "impossible": Key(
            Items(
                Record(
                    N_("an impossible combination"),
                    {
                        "when": Key(CONDITION, N_("The combination"), required=True),
                        "because": Key(TEXT, N_("Why it cannot be"), required=True),
                    },
                )
            ),
            N_("Combinations that cannot be"),
        ),
    },
)

WALL_CHART = Record(
    N_("the wall chart"),
    {
        "use when": Key(TEXT, N_("The sign at which somebody points at the chart"), required=True),
        "first": Key(NAMES, N_("The first actions, at most four")),
        "then": Key(NAMES, N_("The steps that follow, in order"), required=True),
    },
)

ACCEPTANCE = Record(
    N_("an acceptance"),
    {
        "check": Key(NAME, N_("The check's name"), required=True),
        "at": Key(TEXT, N_("The place as `check` prints it"), required=True),
        "reason": Key(TEXT, N_("Why it is accepted"), required=True),
    },
)

PATHWAY = Record(
    N_("a pathway"),
    {
        "pathway": Key(NAME, N_("The pathway's name"), required=True),
        "title": Key(TEXT, N_("What it is called"), required=True),
        "summary": Key(TEXT, N_("When it is for"), required=True),
        "edition": Key(EDITION, N_("The edition"), required=True),
        "status": Key(one_of(*Status), N_("Where it stands in its life"), required=True),
        "authors": Key(Items(TEXT), N_("Who wrote it, by office"), required=True),
        **APPROVAL_KEYS,
        "reviewed": Key(DATE, N_("When it was last reviewed"), required=True),
        "review by": Key(DATE, N_("When it is next to be reviewed"), required=True),
        "reason for change": Key(TEXT, N_("Why this edition was made, in a line")),
        "start": Key(NAME, N_("The first step"), required=True),
        "phases": Key(Entries(TEXT), N_("The phases in order, each with its title"), required=True),
        **WORD_TABLES,
        "wall chart": Key(WALL_CHART, N_("What the wall chart shows")),
        "cases": Key(CASES, N_("The table of cases")),
        "accepted": Key(
            Items(ACCEPTANCE), N_("Reported problems that are accepted, with a reason")
        ),
        "steps": Key(Entries(STEP), N_("The steps, in reading order"), required=True),
    },
)
