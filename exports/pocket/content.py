"""What stands on a pocket card, in words; how much of it fits is settled where it is placed."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import zip_longest

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

MOST_DECISIONS = 7
NUMBERS = N_("Numbers after “see” are those of the full pathway.")


@dataclass(frozen=True, slots=True)
class FirstAction:
    """An action's headline and what each duty does, as (duty, texts), in order."""

    of: str
    headline: str
    lines: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Exit:
    """Answers that lead alike, and where."""

    of: str
    answers: str
    leads: str


@dataclass(frozen=True, slots=True)
class Decision:
    """A question and its exits."""

    of: str
    question: str
    exits: tuple[Exit, ...]


@dataclass(frozen=True, slots=True)
class Note:
    """A signal word, the harm, and the right thing to do."""

    signal: str
    harm: str
    instead: str


@dataclass(frozen=True, slots=True)
class PocketCard:
    """The whole card. `questions` counts those of the full pathway, `cautions` as well."""

    title: str
    trigger: str
    first: tuple[FirstAction, ...]
    decisions: tuple[Decision, ...]
    questions: int
    calls: tuple[str, ...]
    notes: tuple[Note, ...]
    cautions: int
    review_by: str
    numbers: tuple[str, ...] = ()
    """How each of the calls is made; empty where the unit has not set it."""

    @property
    def phones(self) -> tuple[tuple[str, str], ...]:
        """Each call with how it is made, or with nothing."""
        return tuple(zip_longest(self.calls, self.numbers[: len(self.calls)], fillvalue=""))


def more_decisions(card: PocketCard, shown: int) -> str:
    """Return how many decisions the card leaves to the full pathway; nothing where it has all."""
    left = card.questions - shown
    return (
        _("First decisions only; the full pathway has {left} more.").format(left=left)
        if left
        else ""
    )


def more_lines(card: PocketCard, shown: int) -> str:
    """Return that who does what in some first actions is told elsewhere."""
    with_lines = sum(bool(each.lines) for each in card.first)
    return _("Who does what in the other first actions: role cards.") if shown < with_lines else ""


def more_notes(card: PocketCard, shown: int) -> str:
    """Return how many safety notes are left to the full pathway."""
    left = card.cautions - shown
    return (
        _("The first dangers only; the full pathway has {left} more safety notes.").format(
            left=left
        )
        if left
        else ""
    )
