"""One case: a combination of findings, and the walk it leads to."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import TypeAlias

from chamberwise.engine.cases.answering import Answering, CaseError
from chamberwise.engine.cases.doubt import Doubt, doubt
from chamberwise.engine.cases.hang import Hang
from chamberwise.engine.cases.way import Way
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.advance import Passage, begin, moves, passage
from chamberwise.engine.meaning.state import Answered, Done, Move, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import CaseTable, Impossible
from chamberwise.engine.model.step import Outcome, PathwayId, Question
from chamberwise.engine.model.words import ActId, FindingId, ValueId

MOST_MOVES = 1000

Combination = tuple[tuple[FindingId, ValueId], ...]
Onward: TypeAlias = Callable[[State, Move], Passage]
"""Where a move leads from a state."""


@dataclass(frozen=True, slots=True)
class Case:
    """What one combination leads to. `plan` holds, by column, what was planned, in walk order.

    `doubts` has an entry for each declaration that calls it impossible, `not_asked` the findings
    of the combination that the walk did not need, `problem` why the case is open.
    """

    combination: Combination
    plan: Mapping[str, tuple[str, ...]]
    acts: tuple[ActId, ...]
    steps: tuple[Place, ...]
    outcome: Place | None
    doubts: tuple[Doubt, ...] = ()
    not_asked: tuple[FindingId, ...] = ()
    problem: str = ""
    hangs_on: tuple[Hang, ...] = ()

    @property
    def improbable(self) -> bool:
        """Whether the combination is declared impossible."""
        return bool(self.doubts)

    @property
    def looked_again(self) -> bool:
        """Whether one that is declared impossible leads to a second look."""
        return any(each.looked_at for each in self.doubts)


def onward(library: Library) -> Onward:
    """Return `passage` that remembers: most cases go by the same states for a while."""

    @cache
    def made(state: State, move: Move) -> Passage:
        return passage(library, state, move)

    return made


def run_case(
    library: Library,
    pathway: PathwayId,
    combination: Combination,
    table: CaseTable,
    made: Onward | None = None,
) -> Case:
    """Return the case of one combination, walked with the table's assumptions."""
    values = dict(combination)
    answering = Answering(values, dict(table.assume), dict(table.asked_again))
    way = Way(library, values)
    first, problem = begin(library, pathway), ""
    way.pass_over(first.state, first.silent)
    try:
        _walk(library, first.state, answering, way, made or onward(library))
    except CaseError as error:
        problem = str(error)
    ended = isinstance(library.step(way.steps[-1]), Outcome) and not problem
    declared = [each for each in table.impossible if _holds(each, values)]
    doubts = tuple(doubt(library, each, way.happened) for each in declared)
    problems = [problem] if problem else [*_of_doubts(doubts)]
    if not declared:
        problems += _contrary(way)
    return Case(
        combination,
        {column: tuple(said) for column, said in way.plan.items()},
        way.acts,
        tuple(way.steps),
        way.steps[-1] if ended else None,
        doubts,
        way.not_asked,
        "; ".join(problems),
    )


def _walk(library: Library, state: State, answering: Answering, way: Way, onward: Onward) -> None:
    for _move in range(MOST_MOVES):
        step = library.step(state.place)
        move: Answered | Done = Done()
        if isinstance(step, Question):
            given = answering.answer(library, state, step)
            way.answer(state, step, given.value)
            move = Answered(given.answer)
        elif isinstance(step, Outcome):
            return
        elif not moves(library, state):
            raise CaseError(_("`{id}` cannot decide").format(id=step.id))
        made = onward(state, move)
        state = made.state
        way.pass_over(state, made.silent)
    raise CaseError(_("no outcome after {moves} moves").format(moves=MOST_MOVES))


def _holds(declared: Impossible, values: Mapping[FindingId, ValueId]) -> bool:
    return all(values.get(name) in wanted for name, wanted in declared.when.terms)


def _of_doubts(doubts: tuple[Doubt, ...]) -> Iterator[str]:
    for each in doubts:
        if each.stands_at and not each.looked_at:
            yield _("declared impossible, yet not looked at again after `{step}`").format(
                step=each.stands_at.step
            )
        elif each.too_late_for:
            late = each.too_late_for.step
            yield _("declared impossible, yet `{late}` comes before the second look").format(
                late=late
            )


def _contrary(way: Way) -> Iterator[str]:
    for name, place in way.contrary.items():
        value = way.combination[name]
        yield (
            _(
                "`{step}` goes by a `{name}` that cannot be `{value}`, unasked; declare it "
                "impossible"
            ).format(step=place.step, name=name, value=value)
        )
