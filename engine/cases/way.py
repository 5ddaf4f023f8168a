"""What the walk of a case passed: steps, acts, answers, and what each step says for the table."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from chamberwise.engine.meaning.advance import CameBack, Silent
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Action, Branch, Question, Step
from chamberwise.engine.model.words import ActId, FindingId, ValueId


@dataclass(frozen=True, slots=True)
class Asked:
    """A question was asked and answered with a value."""

    place: Place
    finding: FindingId
    value: ValueId


@dataclass(frozen=True, slots=True)
class Acted:
    """An act was done."""

    place: Place
    act: ActId


class Way:
    """A walk under way. `contrary` says, by finding, where it was known otherwise unasked."""

    def __init__(self, library: Library, combination: Mapping[FindingId, ValueId]) -> None:
        self.library = library
        self.combination = combination
        self.steps: list[Place] = []
        self.happened: list[Asked | Acted] = []
        self.plan: dict[str, list[str]] = {}
        self.contrary: dict[FindingId, Place] = {}
        self._asked: set[FindingId] = set()

    @property
    def acts(self) -> tuple[ActId, ...]:
        """The acts done, in order."""
        return tuple(each.act for each in self.happened if isinstance(each, Acted))

    @property
    def not_asked(self) -> tuple[FindingId, ...]:
        """The findings of the combination that no question of the walk asked."""
        return tuple(name for name in self.combination if name not in self._asked)

    def pass_over(self, state: State, silent: tuple[Silent, ...]) -> None:
        """Note what was passed silently on the way to a state, and the step there."""
        for each in silent:
            place = each.outcome if isinstance(each, CameBack) else each.place
            self._compare(state, place)
            self._say(self.library.step(place))
        self.steps.append(state.place)
        step = self.library.step(state.place)
        self._say(step)
        if isinstance(step, Action):
            acts = (line.act for line in step.lines if line.act)
            self.happened += [Acted(state.place, act) for act in acts]

    def answer(self, state: State, question: Question, value: ValueId) -> None:
        """Note an answer."""
        self._compare(state, state.place)
        self._asked.add(question.ask)
        self.happened.append(Asked(state.place, question.ask, value))

    def _compare(self, state: State, place: Place) -> None:
        """See whether a step goes by something known that the combination says otherwise of.

        Nothing silent changes what is known, so the state after it tells what was known at it.
        """
        layout = layout_of(self.library)
        for name in reads(self.library.step(place)):
            if name in self.combination and name not in self._asked:
                field = layout.field(place.pathway, name)
                bit = field.bits.get(self.combination[name])
                if bit and not bit & state.possible:
                    self.contrary.setdefault(name, place)

    def _say(self, step: Step) -> None:
        for column, said in step.plan:
            entries = self.plan.setdefault(column, [])
            if said not in entries:
                entries.append(said)


def reads(step: Step) -> Iterator[FindingId]:
    """Yield the findings a step goes by: what a question asks, what a branch decides on."""
    if isinstance(step, Question):
        yield step.ask
    elif isinstance(step, Branch):
        for row in step.rows:
            yield from (name for name, _ in row.when.terms)
