"""What a typed line means: what may be taken for sure, and what has to be asked.

What is near both a right and a wrong act is asked, and the right one is offered first.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from chamberwise.engine.drill.entries import Certainty
from chamberwise.engine.drill.wording.clauses import Clause, Kind, clauses_of
from chamberwise.engine.drill.wording.marks import unmarked
from chamberwise.engine.drill.wording.nearness import Near, alike, nearest
from chamberwise.engine.drill.wording.phrasebook import Phrasebook, Target
from chamberwise.engine.drill.wording.questions import as_an_order, asks_leave, asks_whether
from chamberwise.engine.drill.wording.tokens import tokens_of, words_of

SURE = 0.80
CLEARLY = 0.06
"""How far the best target must be ahead of the next."""
CLEARLY_NOT_HARM = 0.15
"""How far ahead it must be where one of the two is harmful and the other is not."""
MOST_ASKED = 4

WORD_FOR_WORD = 0.97
_EXCLAIMED = re.compile(r"^(?:oh|ah|no)[ ,!]+no[ ,!]+(?=\S)", re.IGNORECASE)
"""It denies nothing: `oh no, the capsule has gone`."""


@dataclass(frozen=True, slots=True)
class Understood:
    """What a line means. `taken` is sure, `first` is to be done before it unless it was.

    `asked` are the targets to choose from where it is not sure, the likeliest first.
    """

    taken: tuple[Target, ...] = ()
    first: tuple[Target, ...] = ()
    asked: tuple[Target, ...] = ()
    says_trigger: bool = False
    asks_trigger: bool = False
    """Whether it only asks whether this is it: then nobody has been told."""
    only_not_done: bool = False
    certainty: Certainty | None = None


def understand(book: Phrasebook, typed: str) -> Understood:
    """Return what a typed line means. A mark at its end says how sure somebody is.

    What asks whether to do something is done only once somebody says yes to it.
    """
    whole, certainty = unmarked(_EXCLAIMED.sub("", typed.strip()))
    text = whole.rstrip("!~?").strip()
    if not any(letter.isalpha() for letter in text):
        return Understood(certainty=certainty)
    meant = _understood(book, as_an_order(text))
    named = [each for each in clauses_of(text) if says_trigger(book, each)]
    says = any(not _asks(whole, text, each) for each in named)
    meant = replace(meant, says_trigger=says, certainty=certainty)
    if named and not says:
        meant = _not_announced(book, replace(meant, asks_trigger=True))
    acts = tuple(each for each in meant.taken if each.act)
    if acts and not says and asks_leave(whole):
        asked = tuple(dict.fromkeys((*acts, *meant.asked)))[:MOST_ASKED]
        meant = replace(meant, taken=(), first=(), asked=asked)
    return meant


def _asks(whole: str, text: str, clause: Clause) -> bool:
    """Whether a clause of a line asks what it names."""
    is_last = text.endswith(clause.text.rstrip("?! "))
    return asks_whether(clause.text, ends_in_question=is_last and whole.endswith("?"))


def _not_announced(book: Phrasebook, meant: Understood) -> Understood:
    def others(of: Iterable[Target]) -> tuple[Target, ...]:
        return tuple(each for each in of if each != book.announce)

    return replace(
        meant, taken=others(meant.taken), first=others(meant.first), asked=others(meant.asked)
    )


def _understood(book: Phrasebook, text: str) -> Understood:
    """Return what a line without marks means, its trigger left aside."""
    clauses = clauses_of(text)
    if said := _word_for_word(book, text):
        return Understood((said,))
    taken: list[Target] = []
    first: list[Target] = []
    asked: list[Target] = []
    for clause in _told_apart(book, clauses):
        if clause.kind is Kind.LATER:
            continue
        sure, near = _meant(book, clause)
        (first if clause.kind is Kind.DONE_BEFORE else taken).extend(sure)
        if clause.kind is not Kind.DONE_BEFORE:
            asked += near
    whole = _whole(book, text) if not taken or asked else ()
    if whole:
        taken, asked = list(whole), []
    not_done = all(_is_negative(book, each) for each in clauses if each.kind is not Kind.LATER)
    chosen = tuple(dict.fromkeys(taken))
    return Understood(
        chosen,
        tuple(each for each in dict.fromkeys(first) if each not in chosen),
        () if chosen else tuple(dict.fromkeys(asked))[:MOST_ASKED],
        only_not_done=not_done,
    )


def _told_apart(book: Phrasebook, clauses: Sequence[Clause]) -> Iterator[Clause]:
    """Yield clauses, a first one without its comma cut where both halves mean most.

    `after filling withdraw the tip` says two things.
    """
    first, *others = clauses or (Clause(""),)
    if first.kind is Kind.DONE or any(each.kind is Kind.DONE for each in others):
        yield from clauses
        return
    words = first.text.split()
    best: tuple[float, int] = (0.0, 0)
    for cut in range(1, len(words)):
        halves = (" ".join(words[:cut]), " ".join(words[cut:]))
        scores = [found[0].score for found in (nearest(book, half) for half in halves) if found]
        if len(scores) == len(halves):
            best = max(best, (min(scores), -cut))
    cut = -best[1]
    yield Clause(" ".join(words[:cut]), first.kind) if cut else first
    yield from [Clause(" ".join(words[cut:]))] if cut else []
    yield from others


def says_trigger(book: Phrasebook, clause: Clause) -> bool:
    """Whether a clause says what this is, in any of the words for it."""
    tokens, is_negative = tokens_of(words_of(clause.text, book.stand_for))
    if is_negative and clause.kind is not Kind.DONE:
        return False
    words = words_of(clause.text, book.stand_for)
    if any(word in ("not", "no", "never", "without", "isnt", "avoid") for word in words):
        return False
    return any(
        all(any(alike(each, token) for token in tokens) for each in trigger)
        for trigger in book.triggers
    )


def _word_for_word(book: Phrasebook, text: str) -> Target | None:
    """Return the target of a line that is itself one of the phrases, whatever words cut it up."""
    found = nearest(book, text)
    if found and found[0].score >= WORD_FOR_WORD and is_sure(book, found):
        return found[0].target
    return None


def _is_negative(book: Phrasebook, clause: Clause) -> bool:
    return clause.kind is Kind.NOT_DONE or tokens_of(words_of(clause.text, book.stand_for))[1]


def _whole(book: Phrasebook, text: str) -> tuple[Target, ...]:
    """Return what a line means taken as one, where cutting it up left a doubt."""
    if any(each.kind is not Kind.DONE for each in clauses_of(text)):
        return ()
    sure, _ = _meant(book, Clause(text))
    return tuple(sure)


def _meant(book: Phrasebook, clause: Clause) -> tuple[list[Target], list[Target]]:
    """Return the targets a clause surely means, else those it may mean."""
    best_sure: list[Target] = []
    best_near: list[Target] = []
    best = -1.0
    for parts in _ways_to_cut(clause.text):
        found = [nearest(book, part, negative=clause.kind is Kind.NOT_DONE) for part in parts]
        if any(not each for each in found):
            continue
        score = min(each[0].score for each in found) - 0.02 * (len(parts) - 1)
        if score <= best:
            continue
        best = score
        best_sure = [each[0].target for each in found if is_sure(book, each)]
        sure = len(best_sure) == len(found)
        best_near = [] if sure else [each.target for each in in_safe_order(book, found[0])]
    return (best_sure, best_near) if not best_near or len(best_sure) else ([], best_near)


def _ways_to_cut(text: str) -> Iterator[tuple[str, ...]]:
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


def is_sure(book: Phrasebook, found: Sequence[Near]) -> bool:
    """Whether the nearest target may be taken without asking."""
    if found[0].score < SURE:
        return False
    harm = book.is_harmful(found[0].target)
    for other in found[1:]:
        ahead = found[0].score - other.score
        apart = CLEARLY_NOT_HARM if book.is_harmful(other.target) is not harm else CLEARLY
        if ahead < apart and not (found[0].score >= 0.995 and ahead > 0):
            return False
    return True


def in_safe_order(book: Phrasebook, found: Sequence[Near]) -> list[Near]:
    """Return what to choose from: a wrong act comes first only where no right one is as near."""
    near = list(found[:MOST_ASKED])
    if near and book.is_harmful(near[0].target):
        limit = near[0].score - CLEARLY
        right = [each for each in found if not book.is_harmful(each.target) and each.score >= limit]
        if right:
            near = [right[0], *(each for each in near if each is not right[0])]
    return near[:MOST_ASKED]
