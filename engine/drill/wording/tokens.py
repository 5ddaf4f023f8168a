"""Typed words brought to one form: small letters, no filling words, endings off."""

from __future__ import annotations

import re
from collections.abc import Mapping

from chamberwise.engine.drill.wording.spelling import Spelling
from chamberwise.engine.drill.wording.stems import stem

NOT = "not"
"""Stands for every word that says what is not done."""

_DENIALS = frozenset(
    {
        *("not", "dont", "doesnt", "didnt", "no", "never", "cannot", "cant", "wont", "shouldnt"),
        *("mustnt", "isnt", "nor", "neither", "without", "wouldnt", "couldnt", "wasnt", "werent"),
        *("havent", "hasnt", "hadnt", "arent", "neednt", "oughtnt", "mightnt", "mightn", "aint"),
        *("nobody", "none", "noone", "nowhere", "cant", "shant", "unable", "against"),
    }
)
_HALTS = frozenset(
    {
        *("avoid", "avoiding", "refrain", "stop", "stopping", "cease", "halt", "skip", "delay"),
        *("postpone", "quit", "refuse", "omit", "defer"),
    }
)
_NEGATIVE = _DENIALS | _HALTS
FILLING = frozenset(
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
            "pls",
            "plz",
            "ive",
            "weve",
            "got",
        ),
        *("now", "i", "we", "you", "he", "she", "would", "will", "should", "shall", "must", "ll"),
        *("d", "s", "is", "are", "am", "be", "been", "was", "it", "that", "this", "these", "those"),
        *("for", "with", "so", "just", "ok", "okay", "can", "could", "let", "lets", "us", "me"),
        *("them", "there", "here", "going", "want", "need", "like", "think", "im", "id", "ill"),
        *("well", "make", "sure", "some", "very", "really", "quickly", "gently", "slowly", "yet"),
        *("carefully", "immediately", "straight", "away", "first", "next", "also", "have", "has"),
        *("had", "do", "does", "did", "as", "by", "from", "at", "which", "what", "where", "when"),
        *("how", "any", "all", "if", "again", "still", "bit", "little", "only", "exactly"),
        *("assistant", "scrub", "nurse", "guys", "asap", "right", "then", "might", "and"),
    }
)
_CARRIES = {
    "still": frozenset({"", "in", "inside", "and", "please", "for", "there", "with", "where"}),
    "let": frozenset({"the", "it", "go", "some", "a", "that", "them", "out", "vitreoretinal"}),
    "going": frozenset({"", "as", "while", "until", "and", "with", "on", "out"}),
}
"""Filling words that carry a meaning before some words or at the end: `hold the lens still`."""
KEPT_IN_SHORT = frozenset({"let", "still", "where", "what", "how", "any", "again"})
"""Filling words that carry a phrase which has few others."""

KNOWN_ANYHOW = _NEGATIVE | FILLING
"""Words that are spelt rightly whatever the book holds."""

_ASKING = frozenset(
    {
        *("is", "are", "was", "do", "does", "did", "has", "have", "can", "where", "wheres", "what"),
        *("whats", "how", "hows", "which", "any"),
    }
)
_WRITTEN_AS = {"1": "one", "2": "two", "3": "three", "into": "in", "inside": "in"}
_LETTERS = re.compile(r"[a-z0-9]+")
_WITH = re.compile(r"\bw/(?=\s|[a-z])")
_SLASHED_FIGURES = re.compile(r"(?<=\d)/(?=\d)")
_FIGURE = re.compile(r"\b([123])(?=[a-z]+\b)(?!st\b|nd\b|rd\b|x\b|d\b)()")
_LONGEST_KEY = 3


def written(text: str) -> list[str]:
    """Return the words of a text as they were written, in small letters.

    >>> written("Don't put the 3pc I/A-tip there!")
    ['dont', 'put', 'the', 'three', 'pc', 'ia', 'tip', 'there']
    """
    text = text.casefold().replace("’", "'").replace("'", "")
    text = _SLASHED_FIGURES.sub(" ", _WITH.sub(" with ", text)).replace("/", "")
    words = _LETTERS.findall(_FIGURE.sub(r"\1 \2", text))
    return [_WRITTEN_AS.get(word, word) for word in words]


def words_of(
    text: str, stand_for: Mapping[str, str], spelling: Spelling | None = None
) -> list[str]:
    """Return the words of a text in small letters, those that stand for others replaced.

    A key of several words has hyphens between them; the longest that fits is replaced.

    >>> words_of("Don't take the I/A tip out!", {"ia": "aspiration"})
    ['dont', 'take', 'the', 'aspiration', 'tip', 'out']
    >>> words_of("it's going south", {"going-south": "falling"})
    ['its', 'falling']
    """
    words = written(text)
    if spelling is not None:
        words = [spelling.of(word) for word in words]
    found: list[str] = []
    at = 0
    while at < len(words):
        for length in range(min(_LONGEST_KEY, len(words) - at), 0, -1):
            instead = stand_for.get("-".join(words[at : at + length]))
            if instead is not None:
                found += written(instead)
                at += length
                break
        else:
            found.append(words[at])
            at += 1
    return found


def asks(words: list[str]) -> bool:
    """Whether words ask something, rather than say what is done.

    >>> asks(["is", "the", "tip", "out"]), asks(["can", "you", "get", "help"])
    (True, False)
    """
    if words[:1] == ["can"] and words[2:3] in (["have"], ["get"]):
        return False
    return words[:1] != [] and words[0] in _ASKING and words[1:2] not in (["you"], ["not"])


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
    kept = [
        word
        for word, after in zip(words, (*words[1:], ""), strict=bool(words))
        if word not in _NEGATIVE and (word not in FILLING or after in _CARRIES.get(word, ()))
    ]
    if len(kept) < 2:
        kept += [word for word in words if word in KEPT_IN_SHORT]
    elif len(kept) == 2 and words[0] == "you":
        kept.append("you")  # `you carry on` speaks of who operates, `carry on` of the work
    return frozenset(stem(word) for word in kept), is_negative
