"""What a wording rule is: one slug, the texts it reads, and a function from a text to its hits.

A rule knows nothing of files, steps or lines: given one text, it says where in it the fault is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.diagnostics.problem import Severity


class TextKind(StrEnum):
    """What a text of a pathway is for; a rule names the kinds it reads."""

    INSTRUCTION = "instruction"  # what a duty does: one line of an action, or something owed
    SPOKEN = "spoken"  # what a duty says aloud
    QUESTION = "question"
    ANSWER = "answer"  # the label of an answer
    SIGN = "sign"  # how a value is told
    CAUTION = "caution"
    INSTEAD = "instead"  # the right thing to do, paired with a caution
    REMEDY = "remedy"  # the right thing to do, paired with a rule; it may be several acts in order
    REASON = "reason"  # why, because, a position's text
    TITLE = "title"


EVERY_KIND = frozenset(TextKind)
TO_BE_DONE = frozenset({TextKind.INSTRUCTION, TextKind.INSTEAD, TextKind.REMEDY})


@dataclass(frozen=True, slots=True)
class Hit:
    """One fault in a text: characters `start` to `end`, what is wrong, what to write instead."""

    start: int
    end: int
    message: str
    advice: str


@dataclass(frozen=True, slots=True)
class WordingRule:
    """A rule on wording. `wrong` and `right` are the example shown to authors and run as tests."""

    slug: str
    title: str
    severity: Severity
    why: str
    source: str
    reads: frozenset[TextKind]
    find: Callable[[str], Iterator[Hit]]
    wrong: str
    right: str
