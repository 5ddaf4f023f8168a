"""How a case answers: the combination first, then what the table assumes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import offered
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Freshness, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import CANNOT_TELL, Question
from chamberwise.engine.model.words import Finding, FindingId, ValueId


class CaseError(Exception):
    """The case cannot go on; `args[0]` says why and what the table needs."""


class Given(NamedTuple):
    """The value a question is answered with, and the answer that says it."""

    value: ValueId
    answer: str


@dataclass(frozen=True, slots=True)
class Answering:
    """Answers by finding: the first time, and once it has gone stale or is known otherwise."""

    combination: Mapping[FindingId, ValueId]
    assume: Mapping[FindingId, ValueId]
    asked_again: Mapping[FindingId, ValueId]

    def answer(self, library: Library, state: State, question: Question) -> Given:
        """Return how a question is answered. Raises `CaseError`."""
        values = self._values(library, state, question)
        for value in values:
            for answer in offered(library, state, question):
                if value in answer.means or value == answer.id == CANNOT_TELL:
                    return Given(value, answer.id)
        raise CaseError(
            _("`{step}` does not offer `{value}` for `{finding}`").format(
                step=question.id, value=values[0], finding=question.ask
            )
        )

    def _values(self, library: Library, state: State, question: Question) -> list[ValueId]:
        """Return what to answer with; the second where the first is ruled out by now."""
        finding = question.ask
        field = layout_of(library).field(state.place.pathway, finding)
        again = [self.asked_again[finding]] if finding in self.asked_again else []
        if again and state.freshness(field) is Freshness.STALE:
            return again
        first = self.combination.get(finding) or chosen(field.finding)
        first = first or self.assume.get(finding) or undecided(field.finding)
        if first is None:
            raise CaseError(
                _("`{step}` asks `{finding}`; add it to `assume`").format(
                    step=question.id, finding=finding
                )
            )
        return [first, *again]


def chosen(finding: Finding) -> ValueId | None:
    """Return what the unit has chosen, where the finding is a choice left to it."""
    return finding.choice.chosen if finding.choice else None


def undecided(finding: Finding) -> ValueId | None:
    """Return how a choice that the unit has not made is answered; nothing for other findings.

    That is as suggested or, without a suggestion, "cannot tell".
    """
    return (finding.choice.suggested or CANNOT_TELL) if finding.choice else None
