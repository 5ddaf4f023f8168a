"""One case: a combination of findings, and the walk it leads to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from chamberwise.engine.cases.answering import Answering, CaseError
from chamberwise.engine.meaning.advance import Silent, begin, moves, passage
from chamberwise.engine.meaning.state import Answered, Done, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import CaseTable, Impossible
from chamberwise.engine.model.step import Action, Outcome, PathwayId, Question, Step
from chamberwise.engine.model.words import ActId, FindingId, ValueId

MOST_MOVES = 1000

Combination = tuple[tuple[FindingId, ValueId], ...]


@dataclass(frozen=True, slots=True)
class Case:
    """What one combination leads to. `plan` holds, by column, what was planned, in walk order."""

    combination: Combination
    plan: Mapping[str, tuple[str, ...]]
    acts: tuple[ActId, ...]
    steps: tuple[Place, ...]
    outcome: Place | None
    improbable: str = ""
    looked_again: bool = False
    problem: str = ""


def run_case(
    library: Library, pathway: PathwayId, combination: Combination, table: CaseTable
) -> Case:
    """Return the case of one combination, walked with the table's assumptions."""
    answering = Answering(dict(combination), dict(table.assume), dict(table.asked_again))
    way = _Way(library)
    first, problem = begin(library, pathway), ""
    way.pass_over(first.state, first.silent)
    try:
        _walk(library, first.state, answering, way)
    except CaseError as error:
        problem = str(error)
    ended = isinstance(library.step(way.steps[-1]), Outcome) and not problem
    impossible = next((each for each in table.impossible if _holds(each, combination)), None)
    named = {name for name, _ in impossible.when.terms} if impossible else set()
    return Case(
        combination,
        {column: tuple(said) for column, said in way.plan.items()},
        tuple(way.acts),
        tuple(way.steps),
        way.steps[-1] if ended else None,
        impossible.because if impossible else "",
        any(answering.times.get(name, 0) > 1 for name in named),
        problem,
    )


def _walk(library: Library, state: State, answering: Answering, way: _Way) -> None:
    for _ in range(MOST_MOVES):
        step = library.step(state.place)
        if isinstance(step, Question):
            move: Answered | Done = answering.answer(library, state, step)
        elif moves(library, state):
            move = Done()
        elif isinstance(step, Outcome):
            return
        else:
            raise CaseError(f"`{step.id}` cannot decide")
        made = passage(library, state, move)
        state = made.state
        way.pass_over(state, made.silent)
    raise CaseError(f"no outcome after {MOST_MOVES} moves")


class _Way:
    """What a walk passed: steps, acts and what each step says for the table."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self.steps: list[Place] = []
        self.acts: list[ActId] = []
        self.plan: dict[str, list[str]] = {}

    def pass_over(self, state: State, silent: tuple[Silent, ...]) -> None:
        for each in silent:
            place = getattr(each, "place", None)
            if place is not None:
                self._say(self.library.step(place))
        self.steps.append(state.place)
        step = self.library.step(state.place)
        self._say(step)
        if isinstance(step, Action):
            self.acts += [line.act for line in step.lines if line.act]

    def _say(self, step: Step) -> None:
        for column, said in step.plan:
            entries = self.plan.setdefault(column, [])
            if said not in entries:
                entries.append(said)


def _holds(impossible: Impossible, combination: Combination) -> bool:
    values = dict(combination)
    return all(values.get(name) in wanted for name, wanted in impossible.when.terms)
