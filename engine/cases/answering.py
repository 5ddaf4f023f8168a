"""How a case answers: the combination first, then what the table assumes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from chamberwise.engine.meaning.advance import offered
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Answered, Freshness, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import CANNOT_TELL, Question
from chamberwise.engine.model.words import FindingId, ValueId


class CaseError(Exception):
    """The case cannot go on; `args[0]` says why and what the table needs."""


@dataclass(slots=True)
class Answering:
    """Answers by finding: the first time, and once it has gone stale. `times` counts the asking."""

    combination: Mapping[FindingId, ValueId]
    assume: Mapping[FindingId, ValueId]
    asked_again: Mapping[FindingId, ValueId]
    times: dict[FindingId, int] = field(default_factory=dict)

    def answer(self, library: Library, state: State, question: Question) -> Answered:
        """Return the move at a question. Raises `CaseError`."""
        finding = question.ask
        value = self._value(library, state, question)
        self.times[finding] = self.times.get(finding, 0) + 1
        for answer in offered(library, state, question):
            if value in answer.means or value == answer.id == CANNOT_TELL:
                return Answered(answer.id)
        raise CaseError(f"`{question.id}` does not offer `{value}` for `{finding}`")

    def _value(self, library: Library, state: State, question: Question) -> ValueId:
        finding = question.ask
        first = self.combination.get(finding) or self.assume.get(finding)
        stale = state.freshness(layout_of(library).field(state.place.pathway, finding))
        if stale is Freshness.STALE and finding in self.asked_again:
            return self.asked_again[finding]
        if first is None:
            raise CaseError(f"`{question.id}` asks `{finding}`; add it to `assume`")
        return first
