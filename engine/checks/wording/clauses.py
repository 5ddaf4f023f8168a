"""Where the instruction proper begins in a text, and whether a clause forbids.

A condition, a place or a tool may come first ("If the wound leaks, suture it").
"""

from __future__ import annotations

import re

from chamberwise.engine.checks.wording.verbs import verb_at

PROHIBITION = (
    r"(?:do(?:es)?\s{1,3}not|don['’]t|must\s{1,3}not|mustn['’]t|never|avoid|refrain\s{1,3}from)\b"
)
_PROHIBITION = re.compile(
    rf"[\s,]{{0,3}}+(?:(?:please|but|and|then|so)\s{{1,3}})?+({PROHIBITION})", re.I
)
_LEADING = re.compile(
    r"\s*+(?:if|when|whenever|where|wherever|once|before|after|while|until|unless|as|each|every|with"
    r"|without|through|at|under|over|for|from|in|on|to|during|between|behind|using|by|only|except"
    r"|within|throughout|because|since)\b",
    re.IGNORECASE,
)
_TURN = re.compile(r",\s{0,3}(?:then\b)?|\bthen\b", re.IGNORECASE)


def leads_with_condition(text: str, at: int = 0) -> bool:
    """Return whether the text begins with a condition, a place or a tool, not with the act."""
    return _LEADING.match(text, at) is not None


def prohibition_at(text: str, at: int) -> re.Match[str] | None:
    """Return the "do not", "never" or "avoid" that a clause begins with; group 1 is the words."""
    return _PROHIBITION.match(text, at)


def act_start(text: str, at: int = 0) -> int | None:
    """Return where the act begins that a leading clause leads up to, or None if there is none.

    >>> act_start("If the wound leaks, suture it")
    20
    """
    if not leads_with_condition(text, at):
        return at if verb_at(text, at) or prohibition_at(text, at) else None
    for turn in _TURN.finditer(text, at):
        if verb_at(text, turn.end()) or prohibition_at(text, turn.end()):
            return turn.end()
    return None
