"""When a critical act in one context is due again, by FSRS through its published library.

Retention 0.95 and 90 days at most are this program's own choice: interval by interval shorter than
the library's, because what is forgotten here is needed at once and seldom.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import cache
from typing import TYPE_CHECKING

from chamberwise.engine.drill.spacing.grading import Grade
from chamberwise.engine.model.words import ActId

if TYPE_CHECKING:
    from fsrs import Card, Scheduler

RETENTION = 0.95
MOST_DAYS = 90
AT_ONCE = 3
"""Never a pile: so many are shown as due, those most perishable."""
BREAK = timedelta(weeks=8)
"""After so long without a drill a warm-up is offered (a survey of surgeons back from a break)."""


@dataclass(frozen=True, slots=True)
class Memory:
    """One critical act in one context: how long it lasts (days), how hard it is, when it is due."""

    act: ActId
    context: str
    stability: float
    difficulty: float
    due: datetime
    last: datetime


def after(memory: Memory | None, act: ActId, context: str, grade: Grade, now: datetime) -> Memory:
    """Return what is remembered once an act was graded; `memory` is None the first time."""
    from fsrs import Rating

    now = now.astimezone(UTC)
    card, _ = _scheduler().review_card(_card(memory), Rating(grade.value), now)
    assert card.stability is not None
    assert card.difficulty is not None
    return Memory(act, context, card.stability, card.difficulty, card.due, now)


def recall(memory: Memory, now: datetime) -> float:
    """Return the chance, from 0 to 1, that it would be recalled now."""
    return _scheduler().get_card_retrievability(_card(memory), now.astimezone(UTC))


def _card(memory: Memory | None) -> Card:
    from fsrs import Card, State

    if memory is None:
        return Card(card_id=1)
    return Card(
        card_id=1,
        state=State.Review,
        stability=memory.stability,
        difficulty=memory.difficulty,
        due=memory.due,
        last_review=memory.last,
    )


@cache
def _scheduler() -> Scheduler:
    from fsrs import Scheduler

    return Scheduler(
        desired_retention=RETENTION,
        learning_steps=(),
        relearning_steps=(),
        maximum_interval=MOST_DAYS,
        enable_fuzzing=False,
    )
