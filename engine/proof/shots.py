"""What every move does to the machines that watch, looked up instead of worked out.

For each move of each node the letters are put together beforehand as far as they do not depend on
what is known; what remains is a few comparisons of bits. A *shot* is what one move does to all
machines, and moves that do the same share one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from copy import copy
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TypeAlias

from chamberwise.engine.exploration.moves import Effect, line_effects
from chamberwise.engine.exploration.program import Node, Program
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.rule import Happening
from chamberwise.engine.model.step import Action, PathwayId
from chamberwise.engine.patterns.machine import Machine
from chamberwise.engine.proof.index import Concern, Index, index_of
from chamberwise.engine.proof.knowing import Knowing, Test
from chamberwise.engine.proof.monitors import Monitor
from chamberwise.engine.proof.showing import Scene, moments_of

Change: TypeAlias = tuple[int, tuple[int, ...]]
"""A machine, and for each of its states the state afterwards."""

Shot: TypeAlias = int
Shifts: TypeAlias = tuple[int, tuple[tuple[int, int], ...]]
"""The bits of the machines that a shot moves, and how far up it takes which of them."""

ShotAt: TypeAlias = "Shot | Varying"
"""The shot of a move, or how to get it from the bits: at a question those once it is answered."""

NO_SHOT: Shot = 0
NO_EFFECT = Effect()
Letters: TypeAlias = dict[int, int]


class Shots:
    """All shots that some moves need, by number; number 0 changes nothing."""

    def __init__(self, monitors: Sequence[Monitor], program: Program, entry: PathwayId) -> None:
        self.monitors = monitors
        self.index: Index = index_of(monitors)
        self.program = program
        self.entry = entry
        self._instant = frozenset(n for n, each in enumerate(monitors) if each.is_instant)
        self._after_letters: dict[tuple[int, tuple[int, ...]], tuple[int, ...] | None] = {}
        self.changes: list[tuple[Change, ...]] = [()]
        self.shifts: list[Shifts] = [(0, ())]
        self.loses: list[tuple[int, ...]] = [()]
        """By shot, the machines without memory that are lost."""
        self.number_of: dict[tuple[Change, ...], Shot] = {(): NO_SHOT}

    def upon(self, program: Program) -> Shots:
        """Return the same shots for a program in which the same bits mean the same."""
        other = copy(self)
        other.program = program
        return other

    def everywhere(self, scenes: Sequence[Scene]) -> list[ShotAt]:
        """Return the shot of a move at each node, worked out once for each scene."""
        shot_at: list[ShotAt] = [NO_SHOT] * len(self.program.nodes)
        spoken_of = self.index.by_label.keys()
        for scene in scenes:
            if self.index.restless or not spoken_of.isdisjoint(scene.labels):
                shot = self._at(scene.node, scene.moments)
                for place in scene.places:
                    shot_at[place] = shot
        return shot_at

    def reads(self, shot_at: Sequence[ShotAt]) -> list[int]:
        """Return by node the bits looked at there: by the step, and by the machines that watch."""
        return [
            node.reads if isinstance(shot, int) else node.reads | shot.reads
            for node, shot in zip(self.program.nodes, shot_at, strict=True)
        ]

    def at(self, node: Node) -> ShotAt:
        """Return the shot of a move at a node."""
        return self._at(node, moments_of(node))

    def _at(self, node: Node, moments: Sequence[Moment]) -> ShotAt:
        concerns = [list(self.index.concerns(moment)) for moment in moments]
        if not any(concerns) and not self.index.restless:
            return NO_SHOT
        before = self._before(node, concerns)
        parts = [self._part(*each) for each in zip(concerns, before, strict=True)]
        acts = [moment.act is not None for moment in moments]
        if not any(part.tests for part in parts):
            letters = [part.sure for part in parts]
            return self.shot(self.does(self.concerned(letters), letters, acts))
        return Varying(self, parts, acts)

    def concerned(self, letters: Sequence[Letters]) -> set[int]:
        """Return the machines that letters may change."""
        return set(self.index.restless).union(*letters)

    def _before(self, node: Node, concerns: Sequence[Sequence[Concern]]) -> Sequence[Effect]:
        """Return by moment what the move did to the bits before it, where that matters."""
        step, program = node.step, self.program
        asks = any(not is_event for each in concerns for *_, is_event in each)
        if not asks or not isinstance(step, Action):
            return [NO_EFFECT] * len(concerns)
        pathway = node.place.pathway
        words = program.library.words(pathway)
        return line_effects(step, words, program.layout, pathway, program.tracked)

    def _part(self, concerns: Sequence[Concern], before: Effect) -> Part:
        part = Part()
        for monitor, bit, _, is_event in concerns:
            if is_event:
                part.sure[monitor] = part.sure.get(monitor, 0) | bit
        for monitor, bit, happening, _ in concerns:
            if not part.sure.get(monitor, 0) & bit:
                part.tests.setdefault(happening, []).append((monitor, bit))
        knowing = Knowing(self.program, self.entry)
        part.asks = [_after(before, knowing.all_of(happening)) for happening in part.tests]
        part.reads = before.reads(knowing.reads)
        return part

    def does(
        self, machines: Iterable[int], letters: Sequence[Letters], acts: Sequence[bool]
    ) -> list[Change]:
        """Return what some moments do to some machines, each moment by its letters and by

        whether an act is done.
        """
        acting = [some for some, is_act in zip(letters, acts, strict=True) if is_act]
        found: list[Change] = []
        for number in machines:
            heard = acting if self.monitors[number].only_acts else letters
            after = self._after(number, tuple([some.get(number, 0) for some in heard]))
            if after is not None:
                found.append((number, after))
        return found

    def shot(self, done: Iterable[Change]) -> Shot:
        """Return the shot that does something to machines, each named once."""
        key = tuple(sorted(done))
        found = self.number_of.get(key)
        if found is None:
            found = self.number_of[key] = len(self.changes)
            changes = tuple([each for each in key if each[0] not in self._instant])
            self.changes.append(changes)
            self.shifts.append(self._shifts(changes))
            self.loses.append(tuple([number for number, _ in key if number in self._instant]))
        return found

    def _after(self, number: int, letters: tuple[int, ...]) -> tuple[int, ...] | None:
        """Return by state of a machine the state after letters; none where nothing changes."""
        key = number, letters
        if key not in self._after_letters:
            machine = self.monitors[number].machine
            self._after_letters[key] = _run(machine, letters)
        return self._after_letters[key]

    def image(self, shot: Shot, carried: int) -> int:
        """Return where a shot takes a set of states of machines."""
        moved, shifts = self.shifts[shot]
        there = carried & ~moved
        for by, bits in shifts:
            there |= (carried & bits) << by if by >= 0 else (carried & bits) >> -by
        return there

    def _shifts(self, changes: Sequence[Change]) -> Shifts:
        """Return changes as shifts: states of many machines go equally far."""
        moved, by_distance = 0, dict[int, int]()
        for number, after in changes:
            monitor = self.monitors[number]
            moved |= monitor.bits
            for state, to in enumerate(after):
                bit = 1 << (monitor.shift + state)
                by_distance[to - state] = by_distance.get(to - state, 0) | bit
        return moved, tuple(by_distance.items())


@dataclass(slots=True)
class Part:
    """The letters of one moment: those that are sure, and those that hang on what is known."""

    sure: Letters = field(default_factory=dict)
    tests: dict[Happening, list[tuple[int, int]]] = field(default_factory=dict)
    """By what hangs on what is known, the machines and the bits of their letters."""
    asks: list[Test] = field(default_factory=list)
    """The tests, in the same order."""
    reads: int = 0

    def varies(self) -> set[int]:
        """Return the machines whose letters hang on what is known."""
        return {machine for concerned in self.tests.values() for machine, _ in concerned}


class Varying:
    """A shot that hangs on what is known, worked out once for each way the tests come out."""

    __slots__ = ("_acts", "_asks", "_by_answers", "_by_bits", "_does", "_parts", "_shots", "reads")

    def __init__(self, shots: Shots, parts: Sequence[Part], acts: Sequence[bool]) -> None:
        self._shots, self._parts, self._acts = shots, parts, acts
        self._asks = [test for part in parts for test in part.asks]
        self._by_bits: dict[int, Shot] = {}
        self._by_answers: dict[tuple[bool, ...], Shot] = {}
        self.reads = 0
        for part in parts:
            self.reads |= part.reads
        sure = [part.sure for part in parts]
        surely = shots.concerned(sure).difference(*(part.varies() for part in parts))
        self._does = shots.does(surely, sure, acts)
        """What is done whatever is known."""

    def __call__(self, bits: int) -> Shot:
        """Return the shot of a move made with some bits."""
        read = bits & self.reads
        found = self._by_bits.get(read)
        if found is None:
            answers = tuple([test(read) for test in self._asks])
            found = self._by_answers.get(answers)
            if found is None:
                found = self._by_answers[answers] = self._shot(answers)
            self._by_bits[read] = found
        return found

    def _shot(self, answers: Sequence[bool]) -> Shot:
        outcomes = iter(answers)
        letters = []
        machines: set[int] = set()
        for part in self._parts:
            some = dict(part.sure)
            for concerned in part.tests.values():
                is_so = next(outcomes)
                for machine, bit in concerned:
                    machines.add(machine)
                    if is_so:
                        some[machine] = some.get(machine, 0) | bit
            letters.append(some)
        return self._shots.shot([*self._does, *self._shots.does(machines, letters, self._acts)])


@lru_cache(maxsize=4096)
def _run(machine: Machine, letters: tuple[int, ...]) -> tuple[int, ...] | None:
    """Return by state the state after some letters; none where nothing changes."""
    states = tuple(range(len(machine.after)))
    after = tuple(machine.run(letters, state) for state in states)
    return None if after == states else after


def _after(before: Effect, test: Test) -> Test:
    return test if before == NO_EFFECT else lambda bits: test(before(bits))
