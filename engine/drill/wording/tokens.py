"""Typed words brought to one form: small letters, no filling words, endings off."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

NOT = "not"
"""Stands for every word that says what is not done."""

_DENIALS = frozenset(
    {
        *("not", "dont", "doesnt", "didnt", "no", "never", "cannot", "cant", "wont", "shouldnt"),
        *("mustnt", "isnt", "nor", "neither", "without"),
    }
)
_HALTS = frozenset({"avoid", "refrain", "stop", "stopping", "cease", "halt"})
_NEGATIVE = _DENIALS | _HALTS
_FILLING = frozenset(
    {
        *(
            "the",
            "a",
            "an",
            "my",
            "your",
            "our",
            "his",
            "her",
            "its",
            "their",
            "of",
            "to",
            "please",
        ),
        *("now", "i", "we", "you", "he", "she", "would", "will", "should", "shall", "must", "ll"),
        *("d", "s", "is", "are", "am", "be", "been", "was", "it", "that", "this", "these", "those"),
        *("for", "with", "so", "just", "ok", "okay", "can", "could", "let", "lets", "us", "me"),
        *("them", "there", "here", "going", "want", "need", "like", "think", "im", "id", "ill"),
        *("well", "make", "sure", "some", "very", "really", "quickly", "gently", "slowly", "yet"),
        *("carefully", "immediately", "straight", "away", "first", "next", "also", "have", "has"),
        *("had", "do", "does", "did", "as", "by", "from", "at", "which", "what", "where", "when"),
        *("how", "any", "all", "if", "into", "again", "still", "bit", "little", "only", "exactly"),
    }
)
KEPT_IN_SHORT = frozenset({"still", "where", "what", "how", "any", "again"})
"""Filling words that carry a phrase which has few others."""

_ASKING = frozenset(
    {
        *("is", "are", "was", "do", "does", "did", "has", "have", "can", "where", "wheres", "what"),
        *("whats", "how", "hows", "which", "any"),
    }
)
_NUMBERS = {"1": "one", "2": "two", "3": "three"}
_ENDINGS = ("ingly", "ings", "ing", "ies", "ed", "es", "s", "e")
_SHORTEST_STEM = 3
_DOUBLED = re.compile(r"([bdgmnprt])\1$")
_LETTERS = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


def words_of(text: str, stand_for: Mapping[str, str]) -> list[str]:
    """Return the words of a text in small letters, those that stand for others replaced.

    >>> words_of("Don't take the I/A tip out!", {"ia": "aspiration"})
    ['dont', 'take', 'the', 'aspiration', 'tip', 'out']
    """
    text = text.casefold().replace("’", "'").replace("'", "").replace("/", "")
    found: list[str] = []
    for word in _LETTERS.findall(text):
        whole = stand_for.get(word)
        parts = [whole] if whole else [stand_for.get(each, each) for each in word.split("-")]
        found += [_NUMBERS.get(each, each) for part in parts for each in part.split()]
    return found


def asks(words: list[str]) -> bool:
    """Whether words ask something, rather than say what is done.

    >>> asks(["is", "the", "tip", "out"]), asks(["can", "you", "get", "help"])
    (True, False)
    """
    return bool(words) and words[0] in _ASKING and words[1:2] != ["you"]


def is_denied_twice(words: list[str]) -> bool:
    """Whether words deny a denial, `do not stop`: too easily misread to be taken for anything."""
    return not _DENIALS.isdisjoint(words) and not _HALTS.isdisjoint(words)


def tokens_of(words: list[str]) -> tuple[frozenset[str], bool]:
    """Return the stems that carry meaning, and whether the words say what is not done.

    >>> tokens, is_negative = tokens_of(["do", "not", "withdraw", "the", "tip"])
    >>> sorted(tokens), is_negative
    (['tip', 'withdraw'], True)
    """
    is_negative = any(word in _NEGATIVE for word in words)
    kept = [word for word in words if word not in _NEGATIVE and word not in _FILLING]
    if len(kept) < 2:
        kept += [word for word in words if word in KEPT_IN_SHORT]
    elif len(kept) == 2 and words[0] == "you":
        kept.append("you")  # `you carry on` speaks of who operates, `carry on` of the work
    return frozenset(stem(word) for word in kept), is_negative


@lru_cache(maxsize=4096)
def stem(word: str) -> str:
    """Return a word without its ending.

    >>> [stem(word) for word in ("cutting", "cuts", "removed", "fill", "pass")]
    ['cut', 'cut', 'remov', 'fill', 'pass']
    """
    for ending in _ENDINGS:
        root = word.removesuffix(ending)
        if root != word and len(root) >= _SHORTEST_STEM and not word.endswith("ss"):
            return _DOUBLED.sub(r"\1", root)
    return word
