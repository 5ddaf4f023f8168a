"""How sure somebody is: said by a word of its own at the end of a line, never by punctuation.

`!` and `?` are how people write; taken for marks they would say what nobody meant to say.
"""

from __future__ import annotations

import re

from chamberwise.engine.drill.entries import Certainty

WORDS = {
    Certainty.SURE: "/sure",
    Certainty.LIKELY: "/likely",
    Certainty.GUESS: "/guess",
}
_MARK = re.compile(r"(?:^|\s)(/(?:sure|likely|guess))\s*$", re.IGNORECASE)


def unmarked(typed: str) -> tuple[str, Certainty | None]:
    """Return a line without its mark, and the mark.

    >>> unmarked("hold still /sure")
    ('hold still', <Certainty.SURE: 3>)
    >>> unmarked("hold still!")
    ('hold still!', None)
    """
    found = _MARK.search(typed)
    if found is None:
        return typed.strip(), None
    said = found[1].casefold()
    return typed[: found.start()].strip(), next(
        each for each, word in WORDS.items() if word == said
    )


def marked_next(typed: str) -> str:
    """Return a line with the next mark: none, sure, likely, a guess, and none again.

    >>> marked_next("hold still"), marked_next("hold still /sure"), marked_next("hold /guess")
    ('hold still /sure', 'hold still /likely', 'hold')
    """
    text, mark = unmarked(typed)
    order = [None, *WORDS]
    after = order[(order.index(mark) + 1) % len(order)]
    return f"{text} {WORDS[after]}".lstrip() if after else text
