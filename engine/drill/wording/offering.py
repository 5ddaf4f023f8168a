"""What is offered where nothing can be taken for sure: the likeliest targets of a whole line.

A phrase counts by how much of it was said, and a target also by how its phrases use the words.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from chamberwise.engine.drill.wording.clauses import ONLY_NAMED, Clause, Kind, says_what_is_so
from chamberwise.engine.drill.wording.doubts import is_denied
from chamberwise.engine.drill.wording.nearness import Heard, Near, heard_of, weighed
from chamberwise.engine.drill.wording.phrasebook import Phrasebook, Target
from chamberwise.engine.drill.wording.stems import stem

LEAST = 0.2
LEAST_NOT = 0.5
"""The same for what is not done, where a wrong guess would turn it round."""
OF_USE = 0.4
"""How much the use of the words counts beside the nearest phrase."""
COMMON = 0.25
"""A stem that so large a share of a target's phrases holds is wholly its own."""


MOST_LEFT_OVER = 0.3
"""Where more is left over, light words alone are no reason to offer something."""
_LIGHT = frozenset(
    stem(word)
    for word in (
        *("put", "take", "get", "bring", "have", "go", "come", "keep", "leave", "make", "let"),
        *("look", "check", "see", "in", "out", "on", "off", "up", "down", "over", "back"),
        *("one", "two", "eat", "time"),
    )
)
OF_WHAT_IS_SO = 0.6
"""What is left of the nearness of a clause that only says how things are."""
OF_THE_WHOLE = 0.9
"""The same of a line taken as one where its clauses mean something of their own."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a line that is compared on its own, and how much it counts."""

    text: str
    is_denied: bool = False
    counts: float = 1.0


def pieces_of(book: Phrasebook, clauses: Sequence[Clause]) -> Iterator[Piece]:
    """Yield the pieces of a line: its clauses, and where nothing is denied, the line as one."""
    said = [each for each in clauses if each.kind not in ONLY_NAMED]
    denies = any(is_denied(book, each) for each in clauses)
    for clause in said:
        if clause.kind is Kind.DONE_BEFORE:
            continue
        is_so = len(said) > 1 and says_what_is_so(clause.text)
        counts = OF_WHAT_IS_SO if is_so else 1.0
        yield Piece(clause.text, clause.kind is Kind.NOT_DONE, counts)
        if clause.kind is Kind.DONE and is_denied(book, clause):
            yield from (Piece(text, counts=counts) for text in _until_denied(book, clause.text))
    if not denies:
        for kept in (said, clauses):
            if len(kept) > 1 or not said:
                yield Piece(" ".join(each.text for each in kept), counts=OF_THE_WHOLE)


def _until_denied(book: Phrasebook, text: str) -> Iterator[str]:
    """Yield what stands before the first denial, cut at `and`."""
    for part in text.split(" and "):
        if is_denied(book, Clause(part)):
            return
        yield part


def likely(book: Phrasebook, text: str, *, negative: bool = False) -> list[Near]:
    """Return the targets that a stretch of words may mean, the likeliest first."""
    heard = heard_of(book, text)
    if heard is None or not heard.slips:
        return []
    said_not = heard.is_negative or negative
    found = [
        replace(
            each,
            score=(1 - OF_USE) * each.score
            + OF_USE * _use(book, heard, each.target, said_not=said_not),
        )
        for each in weighed(book, text, negative=negative)
        if each.left_over <= MOST_LEFT_OVER or _shares_more(book, heard, each.target)
    ]
    least = LEAST_NOT if said_not else LEAST
    return sorted(
        (each for each in found if each.score >= least),
        key=lambda each: (-each.score, each.target),
    )


def _shares_more(book: Phrasebook, heard: Heard, target: Target) -> bool:
    """Whether a target's phrases hold more of the typed words than those that are everywhere."""
    held = {
        *book.used.get((target, False), ()),
        *book.used.get((target, True), ()),
    }
    return any(
        not held.isdisjoint(found) for each, found in heard.slips.items() if each not in _LIGHT
    )


def _use(book: Phrasebook, heard: Heard, target: Target, *, said_not: bool) -> float:
    """Return the share of the typed words that a target's phrases use, rare words weighing more."""
    used = book.used.get((target, said_not), {})
    share = every = 0.0
    for token, found in heard.slips.items():
        weight = book.weights.get(token, 1.2)
        every += weight
        share += weight * max(
            (
                how * min(1.0, used[each] / COMMON) ** 0.5
                for each, how in found.items()
                if each in used
            ),
            default=0.0,
        )
    return share / every
