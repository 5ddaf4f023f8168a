"""How near a stretch of typed words comes to each way of saying an act or a look.

What is said not to be done is compared only with phrases that say so as well, and words that stand
opposite each other never match.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import lru_cache

from chamberwise.engine.drill.wording.opposites import THINGS, WAYS, against, stands
from chamberwise.engine.drill.wording.phrasebook import Phrase, Phrasebook, Target
from chamberwise.engine.drill.wording.tokens import asks, is_denied_twice, tokens_of
from rapidfuzz.fuzz import ratio
from rapidfuzz.process import extract

NEAR = 0.52
NEAR_NOT = 0.66
"""The same for what is not done, where a wrong guess would turn it round."""
LIKE = 84
SHORTEST_MISSPELT = 3
ASKED_OTHERWISE = 0.85
"""What is left of the nearness of a question to an order, and the other way round."""
LEAST_OF_A_PHRASE = 0.45
UNKNOWN_WEIGHT = 1.2
LEFT_OVER_WEIGHT = 2.0
"""The least that a typed word weighs where nothing explains it."""
ALIKE_IN_MEANING = 0.75

SWAPPED = 0.85
"""What is left of the nearness where one thing was typed and the phrase has another instead."""


@dataclass(frozen=True, slots=True)
class Near:
    """A target and how near the words come to it, from 0 to 1.

    `left_over` is how much of what was typed none of its phrases holds, from 0 to 1.
    """

    target: Target
    score: float
    left_over: float = 0.0
    unsaid: float = 0.0
    """How much of its nearest phrase was not typed, from 0 to 1; all, where a way is missing."""


@dataclass(frozen=True, slots=True)
class Heard:
    """Typed words as stems, each with the stems of the book that it may be."""

    slips: Mapping[str, Mapping[str, float]]
    is_negative: bool
    is_question: bool


@lru_cache(maxsize=2048)
def nearest(book: Phrasebook, text: str, *, negative: bool = False) -> tuple[Near, ...]:
    """Return the targets that a stretch of words comes near, the nearest first."""
    heard = heard_of(book, text)
    if heard is None:
        return ()
    if not heard.slips:
        return _bare(book, text)
    least = NEAR_NOT if heard.is_negative or negative else NEAR
    return tuple(each for each in weighed(book, text, negative=negative) if each.score > least)


@lru_cache(maxsize=2048)
def weighed(book: Phrasebook, text: str, *, negative: bool = False) -> tuple[Near, ...]:
    """Return every target that shares a stem with what was typed, the nearest first."""
    heard = heard_of(book, text)
    if heard is None or not heard.slips:
        return ()
    scores: dict[Target, tuple[float, float]] = {}
    for phrase, score, unsaid in _scored(book, heard, negative=heard.is_negative or negative):
        if score > scores.get(phrase.target, (0.0, 0.0))[0]:
            scores[phrase.target] = (score, unsaid)
    found = [
        Near(target, score, left_over(book, heard, target), unsaid)
        for target, (score, unsaid) in scores.items()
    ]
    return tuple(sorted(found, key=lambda each: (-each.score, each.target)))


@lru_cache(maxsize=2048)
def heard_of(book: Phrasebook, text: str) -> Heard | None:
    """Return what a stretch of words holds; nothing where it denies a denial."""
    words = book.words(text)
    if is_denied_twice(words):
        return None
    tokens, is_negative = tokens_of(words)
    return Heard({token: _slips(book, token) for token in tokens}, is_negative, asks(words))


def _scored(
    book: Phrasebook, heard: Heard, *, negative: bool
) -> Iterator[tuple[Phrase, float, float]]:
    """Yield phrases that share a stem with what was heard, how near they come, what is unsaid."""
    best: dict[str, float] = {}
    for found in heard.slips.values():
        for each, how in found.items():
            best[each] = max(how, best.get(each, 0.0))
    typed = [
        (book.weights.get(token, UNKNOWN_WEIGHT), found) for token, found in heard.slips.items()
    ]
    every = sum(weight for weight, _ in typed)
    wrong_way, things = against(stands(heard.slips.keys())), THINGS & best.keys()
    told: dict[Phrase, float] = {}
    for each, how in best.items():
        worth = how * book.weights[each]
        for phrase in book.holding[each]:
            told[phrase] = told.get(phrase, 0.0) + worth
    for phrase, share in told.items():
        if share < LEAST_OF_A_PHRASE * phrase.weight:
            continue
        if phrase.is_negative is not negative or phrase.stands & wrong_way:
            continue
        met = _met(typed, phrase.tokens)
        of_phrase, of_typed = share / phrase.weight, met / every
        score = 2 * of_phrase * of_typed / (of_phrase + of_typed)
        if things - phrase.tokens and phrase.things - best.keys():
            score *= SWAPPED
        if phrase.is_question is not heard.is_question:
            score *= ASKED_OTHERWISE
        yield phrase, score, 1 - of_phrase if WAYS & phrase.tokens <= best.keys() else 1.0


def _met(typed: Sequence[tuple[float, Mapping[str, float]]], tokens: Set[str]) -> float:
    """Return how much of what was typed a phrase's stems meet."""
    met = 0.0
    for weight, found in typed:
        if shared := found.keys() & tokens:
            met += weight * max([found[each] for each in shared])
    return met


def left_over(book: Phrasebook, heard: Heard, target: Target) -> float:
    """Return the share of what was typed that none of a target's phrases holds."""
    held = book.used.get((target, False), {}).keys() | book.used.get((target, True), {}).keys()
    weights = {token: max(book.weights.get(token, 0.0), LEFT_OVER_WEIGHT) for token in heard.slips}
    left = sum(weights[token] for token, found in heard.slips.items() if not held & found.keys())
    return left / sum(weights.values())


@lru_cache(maxsize=8192)
def _slips(book: Phrasebook, token: str) -> dict[str, float]:
    """Return the stems of the book that a typed one may be, and how alike they are."""
    found = {each: ALIKE_IN_MEANING for each in book.like.get(token, ()) if each in book.holding}
    if token in book.holding:
        return {**found, token: 1.0}
    if found or len(token) < SHORTEST_MISSPELT:
        return found
    near = extract(token, book.holding.keys(), scorer=ratio, score_cutoff=LIKE, limit=None)
    return {each: how / 100 for each, how, _ in near if len(each) >= SHORTEST_MISSPELT}


def _bare(book: Phrasebook, text: str) -> tuple[Near, ...]:
    """Return what a line means that is nothing but `stop`."""
    said = [word for word in book.words(text) if word in ("stop", "halt", "stopping")]
    return (Near(Target(act="stop-aspiration"), 1.0),) if said else ()


@lru_cache(maxsize=65536)
def alike(one: str, other: str) -> float:
    """Return how alike two stems are: 1 for the same, less for a slip of the keys, else 0."""
    if one == other:
        return 1.0
    if min(len(one), len(other)) < SHORTEST_MISSPELT:
        return 0.0
    found = ratio(one, other)
    return found / 100 if found >= LIKE else 0.0
