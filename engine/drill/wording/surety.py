"""What may be taken without asking, and in which order the rest is offered."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.drill.wording.nearness import Near
from chamberwise.engine.drill.wording.phrasebook import Phrasebook

SURE = 0.86
SURE_OF_HARM = 0.93
CLEARLY = 0.08
"""How far the best target must be ahead of the next."""
CLEARLY_NOT_HARM = 0.2
"""How far ahead it must be where one of the two is harmful and the other is not."""
MOST_ASKED = 4
ALL_SAID = 0.995
UNEXPLAINED = 0.15
"""What leaves so much over need not be so far behind."""
MOST_UNSAID = 0.2
MOST_LEFT_OVER = 0.0
"""How much of what was typed may stand nowhere among the phrases of what it is taken for."""


def is_sure(book: Phrasebook, found: Sequence[Near]) -> bool:
    """Whether the nearest target may be taken without asking."""
    best = found[0]
    if best.score < SURE or best.left_over > MOST_LEFT_OVER or best.unsaid > MOST_UNSAID:
        return False
    harm = book.is_harmful(best.target)
    if harm and best.score < SURE_OF_HARM:
        return False
    for other in found[1:]:
        ahead = best.score - other.score
        apart = CLEARLY_NOT_HARM if book.is_harmful(other.target) is not harm else CLEARLY
        if other.left_over >= UNEXPLAINED:
            apart /= 2
        if ahead < apart and not (best.score >= ALL_SAID and ahead > 0):
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
