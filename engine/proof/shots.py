"""What every move does to the machines that watch, looked up instead of worked out.

For each move of each node the letters are put together beforehand as far as they do not depend on
what is known; what remains is a few comparisons of bits. A *shot* is what one move does to all
machines, and moves that do the same share one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TypeAlias

from chamberwise.engine.exploration.moves import Effect, line_effects
from chamberwise.engine.exploration.program import Node, Program
from chamberwise.engine.meaning.moments import Moment, warned_of
from chamberwise.engine.model.rule import Happening
from chamberwise.engine.model.step import Action, Handover, Outcome, PathwayId, Question
from chamberwise.engine.patterns.machine import Machine
from chamberwise.engine.proof.index import Index, index_of
from chamberwise.engine.proof.knowing import Knowing, Test
from chamberwise.engine.proof.monitors import Monitor

Change: TypeAlias = tuple[int, tuple[int, ...]]
"""A machine, and for each of its states the state afterwards."""

Shot: TypeAlias = int
ShotAt: TypeAlias = "Shot | Varying"
"""The shot of a move, or how to get it from the bits: at a question those once it is answered."""

NO_SHOT: Shot = 0
Shown: TypeAlias = tuple[object, ...]
"""All that the moments of a move at a node hang on, what is known left aside."""

Letters: TypeAlias = dict[int, int]
Frame: TypeAlias = tuple[Moment, Effect]
"""A moment, what is known left aside, and what the move did to the bits before it."""


class Shots:
    """All shots that some moves need, by number; number 0 changes nothing."""

    def __init__(self, monitors: Sequence[Monitor], program: Program, entry: PathwayId) -> None:
        self.monitors = monitors
        self.index: Index = index_of(monitors)
        self.program = program
        self.entry = entry
        self.changes: list[tuple[Change, ...]] = [()]
        self.moves_bits: list[int] = [0]
        """By shot, the bits of the machines it moves."""
        self.loses: list[tuple[int, ...]] = [()]
        """By shot, the machines without memory that are lost."""
        self.number_of: dict[tuple[tuple[Change, ...], tuple[int, ...]], Shot] = {((), ()): NO_SHOT}

    def everywhere(self) -> list[ShotAt]:
        """Return the shot of a move at each node, worked out once for all that show the same."""
        found: dict[Shown, ShotAt] = {}
        shots: list[ShotAt] = []
        for node in self.program.nodes:
            shown = _shown(node)
            if shown not in found:
                found[shown] = self.at(node)
            shot_at = found[shown]
            if not isinstance(shot_at, int):
                node.reads |= shot_at.reads
            shots.append(shot_at)
        return shots

    def at(self, node: Node) -> ShotAt:
        """Return the shot of a move at a node. Adds to what the node reads."""
        frames = [] if node.is_door else _frames(self.program, node)
        parts = [self._part(*frame) for frame in frames]
        acts = [moment.act is not None for moment, _ in frames]
        if not any(part.tests for part in parts):
            return self.shot([part.sure for part in parts], acts)
        varying = Varying(self, parts, acts)
        node.reads |= varying.reads
        return varying

    def _part(self, moment: Moment, before: Effect) -> Part:
        part = Part()
        concerns = list(self.index.concerns(moment))
        for monitor, bit, happening in concerns:
            if happening == happening.event:
                part.sure[monitor] = part.sure.get(monitor, 0) | bit
        knowing = Knowing(self.program, self.entry)
        for monitor, bit, happening in concerns:
            if not part.sure.get(monitor, 0) & bit:
                part.tests.setdefault(happening, []).append((monitor, bit))
        part.asks = [_after(before, knowing.all_of(happening)) for happening in part.tests]
        part.reads = before.reads(knowing.reads)
        return part

    def shot(self, letters: Sequence[Letters], acts: Sequence[bool]) -> Shot:
        """Return the shot of some moments, each by its letters and by whether an act is done."""
        concerned = {each for some in letters for each in some}
        changes: list[Change] = []
        loses: list[int] = []
        for number in sorted(concerned.union(self.index.restless)):
            monitor = self.monitors[number]
            read = tuple(
                [
                    some.get(number, 0)
                    for some, is_act in zip(letters, acts, strict=True)
                    if is_act or not monitor.only_acts
                ]
            )
            after = _run(monitor.machine, read)
            if after is None:
                continue
            if monitor.is_instant:
                loses += [number] if after[0] == monitor.machine.lost else []
            else:
                changes.append((number, after))
        key = tuple(changes), tuple(loses)
        if key not in self.number_of:
            self.number_of[key] = len(self.changes)
            self.changes.append(key[0])
            self.moves_bits.append(sum(self.monitors[number].bits for number, _ in key[0]))
            self.loses.append(key[1])
        return self.number_of[key]

    def image(self, shot: Shot, carried: int) -> int:
        """Return where a shot takes a set of states of machines."""
        part = carried & self.moves_bits[shot]
        return carried ^ part | self.moved(shot, part)

    def moved(self, shot: Shot, part: int) -> int:
        """Return where a shot takes states of the machines that it moves."""
        there = 0
        for number, after in self.changes[shot]:
            monitor = self.monitors[number]
            here = (part & monitor.bits) >> monitor.shift
            for state, to in enumerate(after):
                if here >> state & 1:
                    there |= 1 << (monitor.shift + to)
        return there


@dataclass(slots=True)
class Part:
    """The letters of one moment: those that are sure, and those that hang on what is known."""

    sure: Letters = field(default_factory=dict)
    tests: dict[Happening, list[tuple[int, int]]] = field(default_factory=dict)
    """By what hangs on what is known, the machines and the bits of their letters."""
    asks: list[Test] = field(default_factory=list)
    """The tests, in the same order."""
    reads: int = 0


class Varying:
    """A shot that hangs on what is known, worked out once for each way the tests come out."""

    __slots__ = ("_acts", "_asks", "_by_answers", "_by_bits", "_parts", "_shots", "reads")

    def __init__(self, shots: Shots, parts: Sequence[Part], acts: Sequence[bool]) -> None:
        self._shots, self._parts, self._acts = shots, parts, acts
        self._asks = [test for part in parts for test in part.asks]
        self._by_bits: dict[int, Shot] = {}
        self._by_answers: dict[tuple[bool, ...], Shot] = {}
        self.reads = 0
        for part in parts:
            self.reads |= part.reads

    def __call__(self, bits: int) -> Shot:
        """Return the shot of a move made with some bits."""
        read = bits & self.reads
        found = self._by_bits.get(read)
        if found is None:
            answers = tuple([test(read) for test in self._asks])
            found = self._by_answers.get(answers)
            if found is None:
                found = self._shots.shot(self._letters(answers), self._acts)
                self._by_answers[answers] = found
            self._by_bits[read] = found
        return found

    def _letters(self, answers: Sequence[bool]) -> list[Letters]:
        outcomes = iter(answers)
        letters = []
        for part in self._parts:
            some = dict(part.sure)
            for concerned in part.tests.values():
                if next(outcomes):
                    for monitor, bit in concerned:
                        some[monitor] = some.get(monitor, 0) | bit
            letters.append(some)
        return letters


def _shown(node: Node) -> Shown:
    step, pathway = node.step, node.place.pathway
    if node.is_door:
        return ()
    warned = warned_of(step) if step.cautions else None
    if isinstance(step, Question):
        return Question, step.ask, warned
    if isinstance(step, Action):
        return Action, pathway, tuple([(line.act, line.who) for line in step.lines]), warned
    if isinstance(step, Handover):
        return Handover, step.to, warned
    if isinstance(step, Outcome):
        return Outcome, step.id, tuple([(line.act, line.who) for line in step.owed]), warned
    return ()


@lru_cache(maxsize=4096)
def _run(machine: Machine, letters: tuple[int, ...]) -> tuple[int, ...] | None:
    """Return by state the state after some letters; none where nothing changes."""
    states = tuple(range(len(machine.after)))
    after = tuple(machine.run(letters, state) for state in states)
    return None if after == states else after


def moments_at(program: Program, node: Node) -> list[Moment]:
    """Return the moments of a move at a node, what is known left aside."""
    return [moment for moment, _ in _frames(program, node)]


def _after(before: Effect, test: Test) -> Test:
    return test if before == Effect() else lambda bits: test(before(bits))


def _frames(program: Program, node: Node) -> list[Frame]:
    """Return the moments of a move at a node, in the order of `meaning.moments`."""
    step, place = node.step, node.place
    plain = Moment(place, 0, 0, warns_of=warned_of(step))
    nothing = Effect()
    match step:
        case Question():
            return [(replace(plain, asks=step.ask), nothing)]
        case Handover():
            return [(replace(plain, hands_over_to=step.to), nothing)]
        case Action():
            words = program.library.words(place.pathway)
            effects = line_effects(step, words, program.layout, place.pathway, program.tracked)
            return [
                (replace(plain, act=line.act, by=line.who), effect)
                for line, effect in zip(step.lines, effects, strict=True)
            ]
        case Outcome():
            owed = [(replace(plain, act=line.act, by=line.who), nothing) for line in step.owed]
            return [*owed, (replace(plain, is_outcome=True), nothing)]
    return []
