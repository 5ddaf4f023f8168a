"""Words that stand opposite each other: one for the other turns an instruction round."""

from __future__ import annotations

import re
from collections.abc import Sequence, Set

OPPOSITES = (
    ("in into inside", "out outside"),
    ("up raise raised increase high higher more", "down lower lowered reduce decrease low less"),
    ("on", "off"),
    ("open opened", "close closed"),
    ("keep leave hold stay remain", "take pull withdraw remove extract retract exit chase"),
    ("start begin continue", "stop end halt"),
    ("fill inject instil", "empty aspirate drain"),
    ("bag", "sulcus"),
    ("front anterior forward", "behind posterior back backward"),
    ("hard", "soft"),
    ("left", "right"),
    ("before", "after"),
    ("above over", "below under beneath"),
    ("dispersive", "cohesive"),
    ("preservative", "preserved"),
    ("first", "last"),
    ("most maximum", "least minimum"),
    ("push advance", "pull withdraw"),
    ("dilate widen", "constrict narrow"),
    ("slow slowly", "fast quickly"),
    ("small", "large"),
    ("always", "seldom"),
)
_PAIRS = tuple((frozenset(one.split()), frozenset(other.split())) for one, other in OPPOSITES)
_WORD = re.compile(r"[a-z]+")


def turned_round(old: str, new: str) -> tuple[str, str] | None:
    """Return a word that was said and the opposite that is said instead, if there is one.

    >>> turned_round("Hold the tip still.", "Pull the tip out gently.")
    ('hold', 'pull')
    >>> turned_round("Hold the tip still.", "Keep the tip where it is.")
    """
    was, now = _words(old), _words(new)
    for pair in _PAIRS:
        for here, there in (pair, pair[::-1]):
            some = here.intersection(was) and not there.intersection(was)
            if some and there.intersection(now) and not here.intersection(now):
                return _first(was, here), _first(now, there)
    return None


def _words(text: str) -> list[str]:
    return [found.group() for found in _WORD.finditer(text.lower())]


def _first(words: Sequence[str], wanted: Set[str]) -> str:
    return next(word for word in words if word in wanted)
