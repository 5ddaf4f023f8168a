"""The form of a safety rule: one published pattern, its roles in plain words, and its scope."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
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
    N_("a happening"),
    {
        "act": Key(ONE_OR_MORE, N_("The act that is done, or one of several")),
        "by": Key(ONE_OR_MORE, N_("The duty that does it")),
        "warns of": Key(ONE_OR_MORE, N_("The act of which a danger or warning is shown")),
        "asks": Key(ONE_OR_MORE, N_("The finding that is asked and answered")),
        "outcome": Key(ONE_OR_MORE, N_("The outcome come to; `any` stands for every one")),
        "hands over to": Key(ONE_OR_MORE, N_("The pathway gone on in")),
        "surely": Key(CONDITION, N_("What surely is true: no other value is possible")),
        "possibly": Key(CONDITION, N_("What may be true: nothing known rules it out")),
        "unless surely": Key(CONDITION, N_("What surely being true would make it harmless")),
        "unless possibly": Key(CONDITION, N_("What possibly being true would make it harmless")),
        "known": Key(ONE_OR_MORE, N_("Findings of which one value is left")),
        "unless known": Key(ONE_OR_MORE, N_("Findings whose being known would make it harmless")),
        "stale": Key(ONE_OR_MORE, N_("Findings that were known and no longer count")),
        "unknown": Key(ONE_OR_MORE, N_("Findings of which nothing was ever known")),
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
    Pattern.ABSENCE: N_("It never happens"),
    Pattern.UNIVERSALITY: N_("Every moment is so"),
    Pattern.EXISTENCE: N_("It happens on every walk"),
    Pattern.BOUNDED_EXISTENCE: N_("It happens so many times at most"),
    Pattern.PRECEDENCE: N_("The one does not happen before the other has"),
    Pattern.RESPONSE: N_("After the one the other still comes"),
    Pattern.ALTERNATE_PRECEDENCE: N_("Each of the one has its own of the other before it"),
    Pattern.CHAIN_PRECEDENCE: N_("The other is the very act before the one"),
    Pattern.CHAIN_RESPONSE: N_("The other is the very act after the one"),
    Pattern.RESPONDED_EXISTENCE: N_("If the one happens on a walk, so does the other"),
    Pattern.NOT_CO_EXISTENCE: N_("The two do not happen on the same walk"),
}

_NAMES = {
    Pattern.ABSENCE: N_("an absence rule"),
    Pattern.UNIVERSALITY: N_("an universality rule"),
    Pattern.EXISTENCE: N_("an existence rule"),
    Pattern.BOUNDED_EXISTENCE: N_("a bounded existence rule"),
    Pattern.PRECEDENCE: N_("a precedence rule"),
    Pattern.RESPONSE: N_("a response rule"),
    Pattern.ALTERNATE_PRECEDENCE: N_("an alternate precedence rule"),
    Pattern.CHAIN_PRECEDENCE: N_("a chain precedence rule"),
    Pattern.CHAIN_RESPONSE: N_("a chain response rule"),
    Pattern.RESPONDED_EXISTENCE: N_("a responded existence rule"),
    Pattern.NOT_CO_EXISTENCE: N_("a not co-existence rule"),
}


def _pattern(pattern: Pattern) -> Key:
    of, by = ROLES[pattern]
    keys = {of: _role(N_("What the rule is of"))}
    if by is not None:
        keys[by] = _role(N_("What must come, or must not"))
    if pattern is Pattern.BOUNDED_EXISTENCE:
        keys[TIMES] = Key(COUNT, N_("How often it may happen"), required=True)
    return Key(Record(_NAMES[pattern], keys), _DOCS[pattern])


SCOPE = Record(
    N_("a scope"),
    {
        "before": Key(HAPPENINGS, N_("Only up to the first time this happens, if it does")),
        "after": Key(HAPPENINGS, N_("Only from the first time this happens")),
        "after each": Key(HAPPENINGS, N_("From every time this happens, anew")),
        "between": Key(HAPPENINGS, N_("From every time this happens, where the other follows")),
        "and": Key(HAPPENINGS, N_("The end of what lies between")),
        "until": Key(HAPPENINGS, N_("The end of what begins after each")),
    },
    exactly_one=("before", "after", "after each", "between"),
    together=("between", "and"),
    only_with={"until": ("after each",)},
)

RULE = Record(
    N_("a rule"),
    {
        "title": Key(TEXT, N_("The rule in plain words"), required=True),
        **{str(pattern): _pattern(pattern) for pattern in Pattern},
        "scope": Key(SCOPE, N_("Where it must hold; left out, on the whole walk")),
        "harm": Key(TEXT, N_("The harm it stands against"), required=True),
        "severity": Key(one_of(*HarmSeverity), N_("How bad that harm is"), required=True),
        "instead": Key(TEXT, N_("The right thing to do"), required=True),
        "sources": SOURCES,
    },
    exactly_one=tuple(Pattern),
    only_with={"scope": SCOPED},
)
