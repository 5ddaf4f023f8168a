"""What makes a line too doubtful to be taken without asking, however near its words come."""

from __future__ import annotations

import re
from collections.abc import Iterable

from chamberwise.engine.drill.wording.clauses import Clause, Kind
from chamberwise.engine.drill.wording.phrasebook import Phrasebook
from chamberwise.engine.drill.wording.tokens import tokens_of, written

_NOT_YET = re.compile(r"\b(?:yet|for now|at the moment)\b", re.IGNORECASE)
"""With a denial it puts off, and does nothing instead: `no lens yet`."""
_CONDITION = re.compile(
    r"(?<!ask )(?<!see )(?<!check )(?<!tell me )(?<!know )(?<!what )\bif\b"
    r"|\bunless\b|^(?:should the)\b",
    re.IGNORECASE,
)
_NO_NEED = re.compile(
    r"\b(?:i'?m|i am|we'?re|we are|it'?s|everything is|all)"
    r" (?:fine|good|okay|ok|alright|all right)\b"
    r"|\bno need\b|\bnot needed\b|\bunder control\b|\bnothing(?:'s| is)? wrong\b",
    re.IGNORECASE,
)
"""It takes back what it seems to ask for: `tell the consultant I'm fine`."""
_ELSEWHERE = frozenset({"it", "them", "one", "that", "this"})


def is_doubtful(book: Phrasebook, text: str, clauses: Iterable[Clause]) -> bool:
    """Whether a line is conditional, leaves something out, or only puts something off."""
    for clause in clauses:
        if clause.kind is Kind.REASON:
            text = text.replace(clause.text, "")
    if _CONDITION.search(text) or _NO_NEED.search(text):
        return True
    return "without" in written(text) or puts_off(book, text)


def puts_off(book: Phrasebook, text: str) -> bool:
    """Whether a line denies something only for now, so that nothing is done instead."""
    return bool(_NOT_YET.search(text)) and is_denied(book, Clause(text))


def is_denied(book: Phrasebook, clause: Clause) -> bool:
    """Whether a clause says what is not done."""
    return clause.kind is Kind.NOT_DONE or tokens_of(book.words(clause.text))[1]


def points_elsewhere(text: str) -> bool:
    """Whether a clause speaks of something that another clause may name: `it`, `them`."""
    return not _ELSEWHERE.isdisjoint(written(text))
