"""Whether words say what this is. To ask for its box, or whether it is so, is not to say it."""

from __future__ import annotations

import re
from itertools import takewhile

from chamberwise.engine.drill.wording.clauses import Clause, Kind
from chamberwise.engine.drill.wording.doubts import is_denied
from chamberwise.engine.drill.wording.fright import EXCLAIMED
from chamberwise.engine.drill.wording.nearness import alike, heard_of, left_over
from chamberwise.engine.drill.wording.phrasebook import Phrasebook
from chamberwise.engine.drill.wording.questions import asks_whether
from chamberwise.engine.drill.wording.stems import stem
from chamberwise.engine.drill.wording.tokens import tokens_of

_NOT_SAID = frozenset({"not", "no", "never", "without", "isnt", "avoid"})
_CALLED_AFTER_IT = frozenset(
    {"box", "chart", "card", "sheet", "protocol", "poster", "pack", "set", "drill", "script"}
)
"""Things that bear its name: `rupture box please` tells nobody what has happened."""
_MADE = re.compile(r"^(?:please\s+)?(?:open|tear|break|rupture)\s+(?:the|my|up|it|this)\b", re.I)
"""An order to do it, not word that it is so."""
_KEPT_QUIET = re.compile(
    r"\b(?:don'?t|do not|never|wouldn'?t|won'?t|avoid(?: to)?)\s+"
    r"(?:say|tell|speak|announce|mention|shout|declare|call)\b",
    re.I,
)
_ONLY_SUPPOSED = re.compile(r"\b(?:if|unless|in case|lest|should the|for fear)\b", re.I)
MOST_BESIDES = 0.25
"""How much of a clause that says what this is may be other words and still be nothing else."""
_SUPPOSED = frozenset({Kind.LATER, Kind.NOT_DONE})


def orders_it(text: str) -> bool:
    """Whether words have somebody do it, rather than say that it is so.

    >>> orders_it("open the capsule"), orders_it("open capsule!")
    (True, False)
    """
    return bool(_MADE.match(text))


def says_trigger(book: Phrasebook, clause: Clause) -> bool:
    """Whether a clause says what this is, in any of the words for it."""
    words = book.words(clause.text)
    if tokens_of(words)[1] and clause.kind is not Kind.DONE:
        return False
    if not _NOT_SAID.isdisjoint(words) or orders_it(clause.text):
        return False
    if _KEPT_QUIET.search(clause.text):
        return False
    tokens, _is_negative = tokens_of(_without_things(book, words))
    return any(
        all(any(alike(each, token) for token in tokens) for each in trigger)
        for trigger in book.triggers
    )


def tells_team(book: Phrasebook, whole: str, text: str, clause: Clause) -> bool:
    """Whether a clause that says what this is tells it, rather than asks or supposes it."""
    is_last = text.endswith(clause.text.rstrip("?! "))
    if asks_whether(clause.text, ends_in_question=is_last and whole.endswith("?")):
        return False
    return clause.kind not in _SUPPOSED and not _ONLY_SUPPOSED.search(clause.text)


def only_says_it(book: Phrasebook, clause: Clause) -> bool:
    """Whether a clause says what this is, and hardly anything besides."""
    if not says_trigger(book, clause) or is_denied(book, clause):
        return False
    heard = heard_of(book, clause.text)
    return heard is None or left_over(book, heard, book.announce) <= MOST_BESIDES


def leads_with_it(book: Phrasebook, clause: Clause) -> bool:
    """Whether a clause opens by saying what this is: `PCR get the box`, not `cover the tear`.

    Words of one way to say it may stand among those of another: `the posterior capsule is open`.
    """
    words = _without_things(book, book.words(clause.text))
    said = [each for word in words if word not in EXCLAIMED for each in tokens_of([word])[0]]
    named = frozenset().union(*book.triggers)
    before = takewhile(lambda word: named.isdisjoint(tokens_of([word])[0]), words)
    if tokens_of([*before])[1]:
        return False
    opening = frozenset(takewhile(named.__contains__, said))
    return any(trigger <= opening for trigger in book.triggers)


def _without_things(book: Phrasebook, words: list[str]) -> list[str]:
    """Return words without the name of a thing that is called after it."""
    named = {token for trigger in book.triggers for token in trigger}
    kept = list(words)
    for thing in (place for place, word in enumerate(words) if word in _CALLED_AFTER_IT):
        place = thing - 1
        while place >= 0 and stem(words[place]) in named:
            kept[place] = ""
            place -= 1
    return [word for word in kept if word]
