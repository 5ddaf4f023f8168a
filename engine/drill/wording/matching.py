"""What a typed line means: what may be taken for sure, and what has to be asked.

What is near both a right and a wrong act is asked, and the right one is offered first.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from chamberwise.engine.drill.wording.clauses import (
    ONLY_NAMED,
    Clause,
    Kind,
    clauses_of,
    goes_on_to_order,
    says_what_is_so,
    ways_to_cut,
)
from chamberwise.engine.drill.wording.doubts import (
    is_denied,
    is_doubtful,
    points_elsewhere,
    puts_off,
)
from chamberwise.engine.drill.wording.fright import is_exclamation, unfrightened
from chamberwise.engine.drill.wording.marks import unmarked
from chamberwise.engine.drill.wording.nearness import Near, nearest
from chamberwise.engine.drill.wording.offering import (
    MOST_LEFT_OVER,
    OF_WHAT_IS_SO,
    likely,
    pieces_of,
)
from chamberwise.engine.drill.wording.phrasebook import Phrasebook, Target
from chamberwise.engine.drill.wording.questions import as_an_order, asks_leave
from chamberwise.engine.drill.wording.surety import MOST_ASKED, in_safe_order, is_sure
from chamberwise.engine.drill.wording.tokens import tokens_of
from chamberwise.engine.drill.wording.triggers import (
    leads_with_it,
    only_says_it,
    orders_it,
    says_trigger,
    tells_team,
)
from chamberwise.engine.drill.wording.understood import Understood

WORD_FOR_WORD = 0.97
HALTED = frozenset({"stop", "halt"})
AROUND = 0.1
"""How much nearer what belongs here and now is offered."""


def understand(book: Phrasebook, typed: str, around: frozenset[Target] = frozenset()) -> Understood:
    """Return what a typed line means. A mark at its end says how sure somebody is.

    What asks whether to do something is done only once somebody says yes to it. `around` are acts
    and looks of the step now open and those beside it: of what is near they are offered first;
    nothing is taken because of them.
    """
    said, certainty = unmarked(typed.strip())
    whole = unfrightened(said)
    text = whole.rstrip("!~?").strip()
    if not any(letter.isalpha() for letter in text):
        return Understood(certainty=certainty)
    if is_exclamation(said):
        return Understood(only_exclaims=True, certainty=certainty)
    meant = _understood(book, as_an_order(text), around)
    named = [each for each in clauses_of(text) if says_trigger(book, each)]
    says = any(tells_team(book, whole, text, each) for each in named)
    meant = replace(meant, says_trigger=says, certainty=certainty)
    if named and not says:
        meant = _not_announced(book, replace(meant, asks_trigger=True))
        if all(only_says_it(book, each) for each in clauses_of(text)):
            meant = replace(meant, asked=())
    elif says and book.announce not in meant.taken:
        meant = _announced(book, meant, named)
    elif orders_it(text):
        meant = _not_announced(book, meant)
    acts = tuple(each for each in meant.taken if each.act)
    if acts and not says and asks_leave(whole):
        asked = tuple(dict.fromkeys((*acts, *meant.asked)))[:MOST_ASKED]
        meant = replace(meant, taken=(), first=(), asked=asked)
    return meant


def _announced(book: Phrasebook, meant: Understood, named: Sequence[Clause]) -> Understood:
    """Return what is meant by a line that says what this is beside something else."""
    others = tuple(each for each in meant.asked if each != book.announce)
    if not meant.taken and not meant.only_not_done:
        return replace(meant, asked=(book.announce, *others)[:MOST_ASKED])
    if any(map(book.is_harmful, meant.taken)) or not any(leads_with_it(book, c) for c in named):
        return meant
    return replace(meant, taken=(book.announce, *meant.taken), asked=others)


def _not_announced(book: Phrasebook, meant: Understood) -> Understood:
    def others(of: Iterable[Target]) -> tuple[Target, ...]:
        return tuple(each for each in of if each != book.announce)

    return replace(
        meant, taken=others(meant.taken), first=others(meant.first), asked=others(meant.asked)
    )


def _understood(book: Phrasebook, text: str, around: frozenset[Target]) -> Understood:
    """Return what a line without marks means, its trigger left aside."""
    clauses = clauses_of(text)
    says_more = len(clauses) > 1 and (
        any(says_trigger(book, each) for each in clauses) or _say_several(book, clauses)
    )
    if not says_more and (said := _word_for_word(book, text)):
        return Understood((said,))
    told = [each for each in _told_apart(book, clauses) if _says_something(book, each)]
    acts = [each for each in told if each.kind in (Kind.DONE, Kind.NOT_DONE)]
    heard = _heard(book, told, several=len(acts) > 1)
    not_done = all(is_denied(book, each) for each in clauses if each.kind not in ONLY_NAMED)
    harmful = {book.is_harmful(each) for each in heard.sure}
    if not is_doubtful(book, text, clauses):
        if heard.sure and not heard.in_doubt and len(harmful) == 1:
            first = tuple(each for each in heard.first if each not in heard.sure)
            return Understood(heard.sure, first, only_not_done=not_done)
        if whole := _whole(book, clauses):
            return Understood(whole, only_not_done=not_done)
    if book.announce in heard.sure and any(says_trigger(book, each) for each in acts):
        others = [each for each in clauses if not only_says_it(book, each)]
        asked = _offered(book, others, heard, around)
        rest = tuple(each for each in asked if each != book.announce)
        left = ", ".join(each.text for each in others if _is_left_open(book, each))
        return Understood((book.announce,), asked=rest, only_not_done=not_done, left_open=left)
    return Understood(asked=_offered(book, clauses, heard, around), only_not_done=not_done)


@dataclass(frozen=True, slots=True)
class _Heard:
    """What the clauses of a line mean, and whether one of them is not sure."""

    sure: tuple[Target, ...]
    first: tuple[Target, ...]
    near: tuple[Near, ...]
    in_doubt: bool


def _heard(book: Phrasebook, told: Sequence[Clause], *, several: bool) -> _Heard:
    sure: list[Target] = []
    first: list[Target] = []
    near: list[Near] = []
    in_doubt = False
    for before, clause in zip((None, *told), told, strict=False):
        orders = before is not None and goes_on_to_order(before, clause)
        if clause.kind in ONLY_NAMED and not orders:
            continue
        meant, may_be = _meant(book, clause)
        if orders:
            wrong = [each for each in meant if book.is_harmful(each)]
            sure += [each for each in meant if each not in wrong]
            near += [Near(each, 1.0) for each in wrong]
            if not meant and may_be and book.is_harmful(may_be[0].target):
                near, wrong = [*near, *may_be], [may_be[0].target]
            in_doubt = in_doubt or bool(wrong)
            continue
        if clause.kind is Kind.DONE and not meant and only_says_it(book, clause):
            sure.append(book.announce)
            continue
        exact = _is_exact(book, clause.text)
        if clause.kind is Kind.DONE_BEFORE:
            first += meant
        elif several and says_what_is_so(clause.text) and not exact:
            near += [replace(each, score=each.score * OF_WHAT_IS_SO) for each in may_be]
        elif meant and (exact or len(told) == 1 or not points_elsewhere(clause.text)):
            sure += meant
        else:
            in_doubt = in_doubt or clause.kind is Kind.DONE
            near += [*(Near(each, 1.0) for each in meant), *may_be]
    return _Heard(tuple(dict.fromkeys(sure)), tuple(dict.fromkeys(first)), tuple(near), in_doubt)


def _offered(
    book: Phrasebook, clauses: Sequence[Clause], heard: _Heard, around: frozenset[Target]
) -> tuple[Target, ...]:
    """Return what to choose from: what clauses are near to, and what the line is as a whole."""
    score: dict[Target, Near] = {each: Near(each, 1.0) for each in heard.sure}
    found = [each for each in heard.near if each.left_over <= MOST_LEFT_OVER]
    for piece in pieces_of(book, clauses):
        for each in likely(book, piece.text, negative=piece.is_denied):
            found.append(replace(each, score=each.score * piece.counts))
    for each in found:
        if each.target not in score or score[each.target].score < each.score:
            score[each.target] = each
    for target in around & score.keys():
        score[target] = replace(score[target], score=score[target].score + AROUND)
    order = sorted(score.values(), key=lambda each: (-each.score, each.target))
    return tuple(each.target for each in in_safe_order(book, order))


def _is_left_open(book: Phrasebook, clause: Clause) -> bool:
    """Whether a clause says something that may have been meant as an act or a look."""
    return (
        clause.kind not in ONLY_NAMED
        and not says_what_is_so(clause.text)
        and _says_something(book, clause)
    )


def _says_something(book: Phrasebook, clause: Clause) -> bool:
    if is_exclamation(clause.text):
        return False
    return bool(tokens_of(words := book.words(clause.text))[0]) or not HALTED.isdisjoint(words)


def _is_exact(book: Phrasebook, text: str) -> bool:
    found = nearest(book, text)
    return bool(found) and found[0].score >= WORD_FOR_WORD and is_sure(book, found)


def _say_several(book: Phrasebook, clauses: Sequence[Clause]) -> bool:
    """Whether a line begins with a bare `stop`, and each other clause is word for word an act."""
    if tokens_of(book.words(clauses[0].text))[0]:
        return False
    return all(each.kind is Kind.DONE and _is_exact(book, each.text) for each in clauses)


def _told_apart(book: Phrasebook, clauses: Sequence[Clause]) -> Iterator[Clause]:
    """Yield clauses, a first one without its comma cut where both halves mean most.

    `after filling withdraw the tip` says two things.
    """
    first, *others = clauses or (Clause(""),)
    if first.kind in (Kind.DONE, Kind.LATER) or any(each.kind is Kind.DONE for each in others):
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


def _word_for_word(book: Phrasebook, text: str) -> Target | None:
    """Return the target of a line that is itself one of the phrases, whatever words cut it up."""
    found = nearest(book, text)
    if found and found[0].score >= WORD_FOR_WORD and is_sure(book, found):
        return None if puts_off(book, text) else found[0].target
    return None


def _whole(book: Phrasebook, clauses: Sequence[Clause]) -> tuple[Target, ...]:
    """Return what a line means taken as one, where cutting it up left a doubt."""
    if any(each.kind is not Kind.DONE for each in clauses):
        return ()
    text = " ".join(each.text for each in clauses)
    sure, _ = _meant(book, Clause(text))
    return tuple(sure)


def _meant(book: Phrasebook, clause: Clause) -> tuple[list[Target], list[Near]]:
    """Return the targets a clause surely means, else those it may mean."""
    best_sure: list[Target] = []
    best_near: list[Near] = []
    best = -1.0
    for parts in ways_to_cut(clause.text):
        found = [nearest(book, part, negative=clause.kind is Kind.NOT_DONE) for part in parts]
        if any(not each for each in found):
            continue
        score = min(each[0].score for each in found) - 0.02 * (len(parts) - 1)
        if score <= best:
            continue
        best = score
        best_sure = [each[0].target for each in found if is_sure(book, each)]
        if len(best_sure) == len(found):
            best_near = []
        else:
            best_near = _nears(book, parts, found)
            best_sure = []
    return best_sure, best_near


def _nears(book: Phrasebook, parts: Sequence[str], found: Sequence[Sequence[Near]]) -> list[Near]:
    """Return what the parts of a clause come near; where one is denied, only denied parts count."""
    denied = [is_denied(book, Clause(part)) for part in parts]
    kept = [each for each, is_denied in zip(found, denied, strict=True) if is_denied >= any(denied)]
    return [near for each in kept for near in each[:MOST_ASKED]]
