"""Words of fright: heard, and nothing comes of them."""

from __future__ import annotations

import re

from chamberwise.engine.drill.wording.tokens import FILLING, written

EXCLAIMED = frozenset(
    {
        *(
            "oh",
            "ah",
            "ahh",
            "eh",
            "uh",
            "er",
            "erm",
            "um",
            "umm",
            "hm",
            "oops",
            "ouch",
            "wow",
            "whoa",
        ),
        *("hmm", "hmmm", "mm", "mmm", "aha"),
        *("god", "jesus", "christ", "hell", "damn", "bloody", "shit", "fuck", "fucking", "crap"),
        *("everyone", "everybody", "people", "folks", "team", "mate", "pls", "odd", "weird"),
        *("strange", "funny", "thats", "whats", "happening", "happened", "hang", "calm", "panic"),
        *("shock", "sorry", "dear", "goodness", "gosh", "heavens", "man", "yeah", "yes"),
    }
)
"""Words of fright. A line of nothing else is heard, and nothing was done by it."""

_LIGHTLY = frozenset({*FILLING, "on", "no", "got", "go", "keep", "about"}) - {"still", "let"}
_EXCLAIMED = re.compile(
    r"^(?:(?:oh|ah|no)[ ,!]+(?:no[ ,!]+)+|(?:(?:oh|ah+|uh|um+|er+m?|oops|shit|fuck|damn|hell"
    r"|bloody hell|christ|jesus|(?:oh )?(?:my )?god)\b[ ,.!]+)+)(?=\S)",
    re.IGNORECASE,
)


def unfrightened(text: str) -> str:
    """Return a text without the fright at its beginning, which denies nothing.

    >>> unfrightened("oh no, the capsule has gone"), unfrightened("no, leave it")
    ('the capsule has gone', 'no, leave it')
    """
    return _EXCLAIMED.sub("", text)


def is_exclamation(text: str) -> bool:
    """Whether a text says nothing but fright: `oh god`, `hang on, that's odd`.

    >>> is_exclamation("oh shit, hang on"), is_exclamation("help"), is_exclamation("oh, stop")
    (True, False, False)
    """
    words = written(text)
    if len(words) > 1 and set(words) == {"no"}:
        return True
    return not EXCLAIMED.isdisjoint(words) and all(
        each in EXCLAIMED or each in _LIGHTLY for each in words
    )
