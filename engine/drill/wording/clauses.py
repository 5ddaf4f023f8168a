"""A line cut into what is done, what is not, what it waits for, and what is only said of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import groupby


class Kind(StrEnum):
    """What a clause says of the act it names."""

    DONE = "done"
    NOT_DONE = "not done"
    DONE_BEFORE = "done before"
    """It belongs before the rest: `after filling`, `once the chamber is full`."""
    LATER = "later"
    """Only named: `before withdrawing`, `until help comes`."""
    REASON = "reason"
    """Why, or what for: `because`, `so that`, `otherwise`."""
    GIVEN = "given"
    """What is so already: `the eye is hard, so I ...`."""


@dataclass(frozen=True, slots=True)
class Clause:
    """A stretch of a line, and what it says of the act it names."""

    text: str
    kind: Kind = Kind.DONE


ONLY_NAMED = frozenset({Kind.LATER, Kind.REASON, Kind.GIVEN})
"""Kinds of clause that name an act without saying that it is done or not done now."""

_SOMETHING = (
    r"(?:i|i'm|it|it's|its|we|we're|we've|i've|they|there|there's|theres|the|this|that|any|a|an"
    r"|my|you|he|she|she's|he's|no|otherwise|nothing|nobody|vitreous|fluid|what|what's)"
)
_PURPOSE = r"(?:i|we) (?:can|can't|cant|could|don't|dont|won't|have|see|know|am|are|get|might)"
_MOVES = r"(?:i|we|it|they) (?:come|leave|withdraw|exit|go|take|pull|bring|remove|slide|move)s?"
"""After `as` it is no reason but the same moment."""
_WOULD = r"(?:i'd|i would|i'll|i will|we'd|we'll|let's|lets|i'm going to|id|ill)"
_CUTS = (
    (
        Kind.REASON,
        r"because|cos|cause|so that|so as to|in order to|in case|to avoid|to prevent|otherwise"
        r"|or else|since|given(?: that)?|due to|for fear of|lest"
        rf"|as(?! {_MOVES}\b)(?= {_SOMETHING}\b)"
        rf"|so(?= {_PURPOSE}\b)|so(?= (?:the|it|it's|its|nothing|there|there's|they|no|you)\b)"
        r"|to make sure|which|meaning",
    ),
    (Kind.NOT_DONE, r"instead of|rather than|without|but not|and not"),
    (
        Kind.LATER,
        r"before|until|till|to stop|(?<!get )(?<!be )ready for|unless|by the time",
    ),
    (
        Kind.DONE_BEFORE,
        r"(?<!go )(?<!going )after(?! everything| all)|once|as soon as|when|now that|only when"
        r"|only after|only once",
    ),
    (
        Kind.DONE,
        r"so(?= (?:i|i'd|i'll|id|ill|we|we'll|let's|lets|let|now|please|just|next|i'm)\b)"
        r"|and then|then|but|while|followed by|plus|, and|[;.,:!?]",
    ),
)
_PATTERN = re.compile(
    "|".join(
        rf"(?P<{kind.name}>(?:(?<=\s)|^|(?<=[,;.!?]))(?:{words})(?=\s|$))" for kind, words in _CUTS
    ),
    re.IGNORECASE,
)
_NOT_AFTER = "".join(
    rf"(?<!\b{word}\s)" for word in ("and", "if", "when", "that", "because", "since")
)
_ENDS = re.compile(rf"[,;:!?]|\.(?!\d)|\bthen\b|(?<=\w\s){_NOT_AFTER}(?={_WOULD}\s)", re.IGNORECASE)
_ACTS = re.compile(
    rf"(?<=\w\s){_NOT_AFTER}(?<!\bbefore\s)(?<!\buntil\s)(?=(?:i|we) (?:go|take|put|use|make|do|get"
    r"|ask|call|fill|hold|stop|check|look|inject|cut|leave|open|pull|bring|remove|lift|close|suture"
    r"|tell|place|choose|set|start)\b)",
    re.IGNORECASE,
)
"""What comes first, without a comma after it: `before closing I check the wound`."""
_STOPS = re.compile(
    r"^\s*((?:stop\s+)*stop\s+everything|stop(?:\s+stop)+)\s+(?=\w)(?!\S+ing\b)"
    r"|^\s*((?:stop|freeze|halt|hold|keep|stay|wait)\b[^,;:.!?]*?(?<!\bso)(?<!\bif)(?<!\band)"
    r"(?<!\bwe)(?<!\byou)(?<!\bi)(?<!\bto)(?<!\bthat))\s+(?=(?:don't|dont|do not|never|nobody)\s)",
    re.IGNORECASE,
)
"""A stop, and without a comma what else is said: `stop pushing don't let go`."""
_STOPS_LAST = re.compile(
    r"(?<=\w)(?<!\bnot)(?<!n't)(?<!\bdont)(?<!\bnever)(?<!\bto)(?<!\band)\s+"
    r"(?=(?:(?:everybody|everyone)\s+stop|stop\s+(?:everything|everybody|everyone))\s*$)",
    re.IGNORECASE,
)
"""A stop for all at the end, without a comma before it: `capsule open everybody stop`."""
_DENIED = re.compile(r"\b(?:not|no|never|avoid|\w+n't|dont|wont|cant)\b", re.IGNORECASE)
"""What hangs on it by `then` is denied with it: `don't cut then aspirate`."""
_STARTS_ANEW = re.compile(rf"^(?:{_WOULD}|then|now|next|first|please|so)\b", re.IGNORECASE)
_WITH = re.compile(rf"^(?:with|having)\b(?=.*\b{_WOULD}\s)", re.IGNORECASE)
_IS_SO = re.compile(
    r"^(?:(?:ok|okay|right|now|and|well|yes|oh) )*(?:"
    r"(?:there|theres|there's|it's|its|it is|they're|that's|this is|we're|we are|i'm|i am)\b"
    r"|(?!(?:let|what|who|where|how|here)'s)\w+'s (?!tip|bag|eye)"
    r"|(?!(?:is|are|has|check|make|see|ask|tell|say|ensure|confirm|keep|hold|think|hope|i|we|you"
    r"|who|what|which|where|how|if|leave|do|does)\b)(?:(?:the|my|that|this|our) )?"
    r"(?:[\w-]+ ){1,2}(?:is|are|has|have|looks|seems|was|were|isn't|isnt)\b"
    r")",
    re.IGNORECASE,
)


_GOES_ON = re.compile(
    rf"^(?:and|or|nor|{_SOMETHING[3:-1]}|which|who|if|when|so|to)\b", re.IGNORECASE
)


def clauses_of(line: str) -> tuple[Clause, ...]:
    """Return the clauses of a line, in order.

    >>> [(c.text, str(c.kind)) for c in clauses_of("fill the chamber before taking the tip out")]
    [('fill the chamber', 'done'), ('taking the tip out', 'later')]
    >>> [(c.text, str(c.kind)) for c in clauses_of("once the chamber is full, take the tip out")]
    [('the chamber is full', 'done before'), ('take the tip out', 'done')]
    >>> [str(c.kind) for c in clauses_of("hold still because it tears, and vitreous comes")]
    ['done', 'reason', 'reason']
    """
    line = _STOPS.sub(lambda said: f"{said[0].strip()} , ", line.replace("’", "'"))
    line = _STOPS_LAST.sub(" , ", line)
    line = re.sub(r"([,;!?]|:(?!\d)|\.(?!\d))", r" \1 ", line)
    found: list[Clause] = []
    kind, start = (Kind.GIVEN if _WITH.search(line) else Kind.DONE), 0
    for cut in _PATTERN.finditer(line):
        _add(found, line[start : cut.start()], kind)
        kind = _kind_after(found, kind, cut, line)
        start = cut.end()
    _add(found, line[start:], kind)
    return tuple(found)


def _kind_after(found: list[Clause], kind: Kind, cut: re.Match[str], line: str) -> Kind:
    """Return the kind of what follows a cut: a reason goes on until something starts anew."""
    named = Kind[cut.lastgroup or Kind.DONE.name]
    if (
        cut[0].casefold() in ("then", "and then", "while")
        and found
        and _DENIED.search(found[-1].text)
    ):
        return Kind.DONE if line[: cut.start()].rstrip().endswith(",") else Kind.LATER
    if kind is not Kind.REASON or named is Kind.REASON:
        if cut[0].casefold() == "so" and named is Kind.DONE:
            found[:] = [replace(each, kind=_given(each.kind)) for each in found]
        return named
    if cut[0] in ".;!?" or cut[0].casefold() in ("then", "and then", "so"):
        return named
    acts = any(each.kind in (Kind.DONE, Kind.NOT_DONE) for each in found)
    if cut[0] in (",", ", and") and (not acts or _STARTS_ANEW.match(line[cut.end() :].strip())):
        return named
    return Kind.REASON


def _given(kind: Kind) -> Kind:
    return Kind.GIVEN if kind is Kind.DONE else kind


def _add(found: list[Clause], text: str, kind: Kind) -> None:
    parts = _ENDS.split(text) if kind is not Kind.DONE else [text]
    if not found and kind in (Kind.LATER, Kind.DONE_BEFORE):
        parts = [piece for part in parts for piece in _ACTS.split(part)]
    for place, part in enumerate(parts):
        if part.strip():
            found.append(Clause(" ".join(part.split()), kind if place == 0 else Kind.DONE))


def goes_on_to_order(before: Clause, clause: Clause) -> bool:
    """Whether a clause behind a reason may be an order: `... as it tears, call the senior`.

    What it means decides; here only what cannot be one is told apart.
    """
    reasons = before.kind is clause.kind is Kind.REASON
    return reasons and not _GOES_ON.match(clause.text) and not says_what_is_so(clause.text)


def says_what_is_so(text: str) -> bool:
    """Whether a clause tells how things are rather than what is done.

    >>> [says_what_is_so(each) for each in ("the vitrector's out", "it is hard", "take it out")]
    [True, True, False]
    """
    return bool(_IS_SO.match(text))


def ways_to_cut(text: str) -> Iterator[tuple[str, ...]]:
    """Yield the ways to take a clause: whole, or cut at some of its "and"s."""
    pieces = [
        " ".join(words)
        for is_and, words in groupby(
            text.split(), lambda word: word.casefold() in ("and", "&", "+")
        )
        if not is_and
    ]
    yield (" ".join(pieces),)
    for cut in range(1, min(1 << (len(pieces) - 1), 16) if len(pieces) > 1 else 1):
        parts = [pieces[0]]
        for place, piece in enumerate(pieces[1:]):
            if cut >> place & 1:
                parts.append(piece)
            else:
                parts[-1] += f" {piece}"
        yield tuple(parts)
