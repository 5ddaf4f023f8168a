"""The form of a safety rule: one published pattern, its roles in plain words, and its scope."""

from __future__ import annotations

from chamberwise.engine.model.rule import HarmSeverity, Pattern
from chamberwise.engine.reading.form_words import CONDITION, ONE_OR_MORE, SOURCES
from chamberwise.engine.reading.shapes import (
    COUNT,
    NAME,
    TEXT,
    Either,
    Key,
    OneOrMore,
    Record,
    one_of,
)

HAPPENING = Record(
    "a happening",
    {
        "act": Key(ONE_OR_MORE, "The act that is done, or one of several"),
        "by": Key(ONE_OR_MORE, "The duty that does it"),
        "warns of": Key(ONE_OR_MORE, "The act of which a danger or warning is shown"),
        "asks": Key(ONE_OR_MORE, "The finding that is asked and answered"),
        "outcome": Key(ONE_OR_MORE, "The outcome come to; `any` stands for every one"),
        "hands over to": Key(ONE_OR_MORE, "The pathway gone on in"),
        "surely": Key(CONDITION, "What surely is true: no other value is possible"),
        "possibly": Key(CONDITION, "What may be true: nothing known rules it out"),
        "unless surely": Key(CONDITION, "What surely being true would make it harmless"),
        "unless possibly": Key(CONDITION, "What possibly being true would make it harmless"),
        "known": Key(ONE_OR_MORE, "Findings of which one value is left"),
        "unless known": Key(ONE_OR_MORE, "Findings whose being known would make it harmless"),
        "stale": Key(ONE_OR_MORE, "Findings that were known and no longer count"),
        "unknown": Key(ONE_OR_MORE, "Findings of which nothing was ever known"),
    },
    fewest=1,
    told_by="act",
)

HAPPENINGS = Either(NAME, OneOrMore(HAPPENING))
"""One act by its name alone, one happening, or a list of which one suffices."""


def _role(doc: str) -> Key:
    return Key(HAPPENINGS, doc, required=True)


_COMES = "comes"

ROLES: dict[Pattern, tuple[str, str | None]] = {
    Pattern.ABSENCE: ("never", None),
    Pattern.UNIVERSALITY: ("always", None),
    Pattern.EXISTENCE: ("some time", None),
    Pattern.BOUNDED_EXISTENCE: ("of", None),
    Pattern.PRECEDENCE: ("before", _COMES),
    Pattern.RESPONSE: ("after", _COMES),
    Pattern.ALTERNATE_PRECEDENCE: ("before each", _COMES),
    Pattern.CHAIN_PRECEDENCE: ("directly before", _COMES),
    Pattern.CHAIN_RESPONSE: ("directly after", _COMES),
    Pattern.RESPONDED_EXISTENCE: ("if", "then"),
    Pattern.NOT_CO_EXISTENCE: ("never both", "and"),
}
"""The keys under each pattern: what it is of, and what must come."""

SCOPED = tuple(Pattern)[:6]
"""The patterns that take a scope."""

TIMES = "at most"

_DOCS = {
    Pattern.ABSENCE: "It never happens",
    Pattern.UNIVERSALITY: "Every moment is so",
    Pattern.EXISTENCE: "It happens on every walk",
    Pattern.BOUNDED_EXISTENCE: "It happens so many times at most",
    Pattern.PRECEDENCE: "The one does not happen before the other has",
    Pattern.RESPONSE: "After the one the other still comes",
    Pattern.ALTERNATE_PRECEDENCE: "Each of the one has its own of the other before it",
    Pattern.CHAIN_PRECEDENCE: "The other is the very act before the one",
    Pattern.CHAIN_RESPONSE: "The other is the very act after the one",
    Pattern.RESPONDED_EXISTENCE: "If the one happens on a walk, so does the other",
    Pattern.NOT_CO_EXISTENCE: "The two do not happen on the same walk",
}


def _pattern(pattern: Pattern) -> Key:
    of, by = ROLES[pattern]
    keys = {of: _role("What the rule is of")}
    if by is not None:
        keys[by] = _role("What must come, or must not")
    if pattern is Pattern.BOUNDED_EXISTENCE:
        keys[TIMES] = Key(COUNT, "How often it may happen", required=True)
    article = "an" if pattern[0] in "aeiou" else "a"
    return Key(Record(f"{article} {pattern} rule", keys), _DOCS[pattern])


SCOPE = Record(
    "a scope",
    {
        "before": Key(HAPPENINGS, "Only up to the first time this happens, if it does"),
        "after": Key(HAPPENINGS, "Only from the first time this happens"),
        "after each": Key(HAPPENINGS, "From every time this happens, anew"),
        "between": Key(HAPPENINGS, "From every time this happens, where the other follows"),
        "and": Key(HAPPENINGS, "The end of what lies between"),
        "until": Key(HAPPENINGS, "The end of what begins after each"),
    },
    exactly_one=("before", "after", "after each", "between"),
    together=("between", "and"),
    only_with={"until": ("after each",)},
)

RULE = Record(
    "a rule",
    {
        "title": Key(TEXT, "The rule in plain words", required=True),
        **{str(pattern): _pattern(pattern) for pattern in Pattern},
        "scope": Key(SCOPE, "Where it must hold; left out, on the whole walk"),
        "harm": Key(TEXT, "The harm it stands against", required=True),
        "severity": Key(one_of(*HarmSeverity), "How bad that harm is", required=True),
        "instead": Key(TEXT, "The right thing to do", required=True),
        "sources": SOURCES,
    },
    exactly_one=tuple(Pattern),
    only_with={"scope": SCOPED},
)
