"""Hunting for a walk that breaks a rule, before every walk is looked at.

Most mutants break a rule soon after the edit. A few hundred walks that first make for the edit and
then go on at random find that far sooner than a search through all states. A walk found is a real
one; that none is found says nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from random import Random

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.mutants.nearing import distances
from chamberwise.engine.proof.monitors import Monitor, monitors
from chamberwise.engine.proof.prove import tracked_fields
from chamberwise.engine.proof.rules import comes_back_by
from chamberwise.engine.proof.shots import NO_SHOT, Shot, Shots
from chamberwise.engine.proof.states import States

ASTRAY = 0.15
"""How often a walk that makes for the edit takes any way instead of the shortest."""

FROM_A_HIT = 0.75
"""How often a walk begins where one before came to the edit."""

MOST_HITS = 64


def hunted(
    library: Library,
    pathway: PathwayId,
    rules: Sequence[Rule],
    near: Iterable[Place],
    seed: str,
    most_moves: int,
) -> Rule | None:
    """Return a rule that some walk breaks, if one is found; the same for the same seed.

    `near` are the steps edited; `most_moves` are made in all before the hunt is given up.
    """
    program = compiled(library, pathway, tracked_fields(library, pathway, rules))
    watching = monitors(rules)
    shots = Shots(watching, program, pathway)
    states = States(program, shots, shots.everywhere())
    back = frozenset(Place(pathway, name) for name in comes_back_by(library, pathway))
    hunt = _Hunt(states, watching, distances(program, near), back, most_moves, Random(seed))
    found = hunt.broken()
    return None if found is None else rules[found]


@dataclass(slots=True)
class _Hunt:
    states: States
    watching: tuple[Monitor, ...]
    far: Sequence[int]
    """By node, how many steps it is from the edit."""
    comes_back: frozenset[Place]
    most_moves: int
    random: Random
    moves: int = 0
    hits: list[tuple[int, int]] = field(default_factory=list)
    """States at the edit, with the states of all machines there."""
    images: dict[tuple[Shot, int], int] = field(default_factory=dict)

    def broken(self) -> int | None:
        """Walk until a walk breaks a rule, and return its number; `None` when out of moves."""
        lost = sum(self._lost(number) for number in self._own())
        not_good = sum(self.watching[number].not_good for number in self._own())
        start = sum(1 << each.shift for each in self.watching if not each.is_instant)
        first = self.states.first()
        while self.moves < self.most_moves and first:
            if self.hits and self.random.random() < FROM_A_HIT:
                state, carried = self.random.choice(self.hits)
                astray = True
            else:
                state, carried, astray = self.random.choice(first), start, False
            state, carried = self._walk(state, carried, lost, astray)
            bad = carried & lost
            if state in self.states.ends and not bad:
                carried = self._after(self.states.ends[state], carried)
                bad = carried & (lost if self._goes_on(state) else lost | not_good)
            if bad:
                return self._rule_of(bad)
        return None

    def _own(self) -> list[int]:
        """Return the machines that tell whether a rule is kept, not whether it ever bites."""
        return [number for number, each in enumerate(self.watching) if not each.is_trigger]

    def _lost(self, number: int) -> int:
        """Return the bit that says that a machine is lost; without memory it has one of ours."""
        machine = self.watching[number]
        return self._instantly(number) if machine.is_instant else machine.lost

    def _instantly(self, number: int) -> int:
        last = self.watching[-1]
        return 1 << (last.shift + len(last.machine.after) + number)

    def _rule_of(self, bad: int) -> int:
        return next(
            self.watching[number].rule
            for number in self._own()
            if bad & (self._lost(number) | self.watching[number].not_good)
        )

    def _goes_on(self, state: int) -> bool:
        return self.states.place(state) in self.comes_back

    def _walk(self, state: int, carried: int, lost: int, astray: bool) -> tuple[int, int]:
        """Walk to an end, or until a rule is lost; return where, and the machines there."""
        states = self.states
        while not carried & lost:
            if not astray and self.far[states.at[state]] == 0:
                astray = True
                if len(self.hits) < MOST_HITS:
                    self.hits.append((state, carried))
            states.open(state)
            count = states.count[state]
            self.moves += 1
            if not count or self.moves > self.most_moves:
                break
            edge = states.begin[state] + self._choice(state, count, astray)
            carried = self._after(states.shot_of[edge], carried)
            state = states.targets[edge]
        return state, carried

    def _choice(self, state: int, count: int, astray: bool) -> int:
        if count == 1:
            return 0
        if astray or self.random.random() < ASTRAY:
            return int(self.random.random() * count)
        begin, at, far = self.states.begin[state], self.states.at, self.far
        steps = [far[at[self.states.targets[begin + each]]] for each in range(count)]
        least = min(steps)
        return self.random.choice([each for each, step in enumerate(steps) if step == least])

    def _after(self, shot: Shot, carried: int) -> int:
        if shot == NO_SHOT:
            return carried
        image = self.images.get((shot, carried))
        if image is None:
            shots = self.states.shots
            image = shots.image(shot, carried)
            for number in shots.loses[shot]:
                image |= self._instantly(number)
            self.images[shot, carried] = image
        return image
