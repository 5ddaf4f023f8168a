"""A line cut into what is done, what is not done, and what it waits for."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    """What a clause says of the act it names."""

    DONE = "done"
    NOT_DONE = "not done"
    DONE_BEFORE = "done before"
    """It belongs before the rest: `after filling`, `once the chamber is full`."""
    LATER = "later"
    """Only named: `before withdrawing`, `until help comes`, `so that`."""


@dataclass(frozen=True, slots=True)
class Clause:
    """A stretch of a line. `joins` says whether it hangs on the clause before by "and"."""

    text: str
    kind: Kind = Kind.DONE


_CUTS = (
    (Kind.NOT_DONE, r"instead of|rather than|without|but not|and not"),
    (
        Kind.LATER,
        r"before|until|till|so that|so as to|in order to|because|in case|to avoid"
        r"|to prevent|to stop|ready for|unless|otherwise",
    ),
    (
        Kind.DONE_BEFORE,
        r"(?<!go )(?<!going )after|once|as soon as|when|now that|only when|only after|only once",
    ),
    (Kind.DONE, r"and then|then|but|while|followed by|plus|, and|[;.,!?]"),
)
_PATTERN = re.compile(
    "|".join(
        rf"(?P<{kind.name}>(?:(?<=\s)|^|(?<=[,;.!?]))(?:{words})(?=\s|$))" for kind, words in _CUTS
    ),
    re.IGNORECASE,
)
_ENDS = re.compile(r"[,;!?]|\.(?!\d)|\bthen\b", re.IGNORECASE)


def clauses_of(line: str) -> tuple[Clause, ...]:
    """Return the clauses of a line, in order.

    >>> [(c.text, str(c.kind)) for c in clauses_of("fill the chamber before taking the tip out")]
    [('fill the chamber', 'done'), ('taking the tip out', 'later')]
    >>> [(c.text, str(c.kind)) for c in clauses_of("once the chamber is full, take the tip out")]
    [('the chamber is full', 'done before'), ('take the tip out', 'done')]
    """
    line = re.sub(r"([,;!?]|\.(?!\d))", r" \1 ", line)
    found: list[Clause] = []
    kind, start = Kind.DONE, 0
    for cut in _PATTERN.finditer(line):
        _add(found, line[start : cut.start()], kind)
        kind, start = Kind[cut.lastgroup or Kind.DONE.name], cut.end()
    _add(found, line[start:], kind)
    return tuple(found)


def _add(found: list[Clause], text: str, kind: Kind) -> None:
    for place, part in enumerate(_ENDS.split(text)):
        if part.strip():
            found.append(Clause(" ".join(part.split()), kind if place == 0 else Kind.DONE))
