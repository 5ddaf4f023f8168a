"""How near a stretch of typed words comes to each way of saying an act or a look.

What is said not to be done is compared only with phrases that say so as well, and words that stand
opposite each other never match.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import lru_cache

from chamberwise.engine.drill.wording.phrasebook import Phrase, Phrasebook, Target
from chamberwise.engine.drill.wording.tokens import asks, is_denied_twice, stem, tokens_of, words_of
from rapidfuzz.fuzz import ratio

NEAR = 0.52
NEAR_NOT = 0.66
"""The same for what is not done, where a wrong guess would turn it round."""
LIKE = 84
SHORTEST_MISSPELT = 3
ASKED_OTHERWISE = 0.9
"""What is left of the nearness of a question to an order, and the other way round."""
LEAST_OF_A_PHRASE = 0.45
UNKNOWN_WEIGHT = 1.2

_OPPOSITE = tuple(
    (frozenset(map(stem, one.split())), frozenset(map(stem, other.split())))
    for one, other in (
        ("in into inside", "out"),
        ("up raise increase high higher more", "down lower reduce decrease low less"),
        ("on", "off"),
        ("open", "close closed"),
        ("single planned one", "three"),
        ("keep leave hold stay remain", "take pull withdraw remove extract retract exit chase"),
        ("start continue carry", "off"),
        ("bag", "sulcus"),
        ("front", "behind posterior back"),
        ("hard", "soft"),
    )
)
_THINGS = frozenset(
    stem(word)
    for word in (
        *(
            "lens",
            "viscoelastic",
            "tip",
            "vitrector",
            "infusion",
            "wound",
            "tear",
            "piece",
            "cortex",
        ),
        *("iris", "cornea", "patient", "speculum", "suture", "triamcinolone", "power"),
    )
)
SWAPPED = 0.85
"""What is left of the nearness where one thing was typed and the phrase has another instead."""


@dataclass(frozen=True, slots=True)
class Near:
    """A target and how near the words come to it, from 0 to 1."""

    target: Target
    score: float


def nearest(book: Phrasebook, text: str, *, negative: bool = False) -> list[Near]:
    """Return the targets that a stretch of words comes near, the nearest first."""
    words = words_of(text, book.stand_for)
    tokens, is_negative = tokens_of(words)
    if is_denied_twice(words):
        return []
    if not tokens:
        return _bare(book, text)
    said_not, is_question = is_negative or negative, asks(words)
    slips = {token: _slips(book, token) for token in tokens}
    scores: dict[Target, float] = {}
    for phrase in _sharing(book, slips):
        if phrase.is_negative is said_not:
            score = _score(book, slips, phrase)
            if phrase.is_question is not is_question:
                score *= ASKED_OTHERWISE
            if score > scores.get(phrase.target, NEAR_NOT if said_not else NEAR):
                scores[phrase.target] = score
    found = [Near(target, score) for target, score in scores.items()]
    return sorted(found, key=lambda each: (-each.score, each.target))


def _slips(book: Phrasebook, token: str) -> dict[str, float]:
    """Return the stems of the book that a typed one may be, and how alike they are."""
    if token in book.holding:
        return {token: 1.0}
    return {each: how for each in book.holding if (how := alike(token, each)) > 0}


def _sharing(book: Phrasebook, slips: Mapping[str, Mapping[str, float]]) -> Iterable[Phrase]:
    return dict.fromkeys(
        phrase for found in slips.values() for each in found for phrase in book.holding[each]
    )


def _bare(book: Phrasebook, text: str) -> list[Near]:
    """Return what a line means that is nothing but `stop`."""
    said = [word for word in words_of(text, book.stand_for) if word in ("stop", "halt", "stopping")]
    return [Near(Target(act="stop-aspiration"), 1.0)] if said else []


def _score(book: Phrasebook, slips: Mapping[str, Mapping[str, float]], phrase: Phrase) -> float:
    if _are_opposite(slips.keys(), phrase.tokens):
        return 0.0
    told = [max(found.get(each, 0.0) for found in slips.values()) for each in phrase.tokens]
    met = [max(found.get(each, 0.0) for each in phrase.tokens) for found in slips.values()]
    of_phrase = _share(book, phrase.tokens, told)
    of_typed = _share(book, slips, met)
    if of_phrase < LEAST_OF_A_PHRASE or not of_typed:
        return 0.0
    score = 2 * of_phrase * of_typed / (of_phrase + of_typed)
    return score * SWAPPED if _is_swapped(slips, phrase.tokens) else score


def _share(book: Phrasebook, tokens: Iterable[str], found: Sequence[float]) -> float:
    weights = [book.weights.get(token, UNKNOWN_WEIGHT) for token in tokens]
    return sum(weight * each for weight, each in zip(weights, found, strict=True)) / sum(weights)


def _is_swapped(slips: Mapping[str, Mapping[str, float]], phrase: Set[str]) -> bool:
    """Whether what was typed names a thing that the phrase has not, and the other way round."""
    typed = {each for found in slips.values() for each in found}
    return bool(_THINGS & typed - phrase) and bool(_THINGS & phrase - typed)


def _are_opposite(typed: Set[str], phrase: Set[str]) -> bool:
    return any(
        (_stands(typed, one, other) and _stands(phrase, other, one))
        or (_stands(typed, other, one) and _stands(phrase, one, other))
        for one, other in _OPPOSITE
    )


def _stands(tokens: Set[str], here: frozenset[str], not_here: frozenset[str]) -> bool:
    return bool(tokens & here) and not tokens & not_here


@lru_cache(maxsize=65536)
def alike(one: str, other: str) -> float:
    """Return how alike two stems are: 1 for the same, less for a slip of the keys, else 0."""
    if one == other:
        return 1.0
    if min(len(one), len(other)) < SHORTEST_MISSPELT:
        return 0.0
    found = ratio(one, other)
    return found / 100 if found >= LIKE else 0.0
