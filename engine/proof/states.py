"""Every state that needs a move, and what each move does to the machines that watch.

`meaning.advance` is the definition; this is the same over integers, held to it by property tests.
Unlike the exploration that the checks use, a pathway handed over to is gone through anew from
every state that hands over to it, so that the number of moves to a state is exact.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Iterator, Sequence

from chamberwise.engine.exploration.liveness import live
from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Action, Branch, Handover, Outcome
from chamberwise.engine.proof.keys import Key, Keys, Laid, Passing, SpotNumber, Stack, Turn
from chamberwise.engine.proof.shots import Shot, ShotAt, Shots

NOT_OPEN = -1
MOST_TURNS = 100
ROOM = 1024
NO_MARKS, NOT_OPENED = [0] * ROOM, [NOT_OPEN] * ROOM


class States:
    """The states met so far, by number in the order met; each is opened when it is first needed.

    The edges of an open state stand in `targets` and `shot_of` from `begin[state]` on, as many as
    `count[state]`, in the order of the moves.
    """

    def __init__(
        self, program: Program, shots: Shots, shot_at: Sequence[ShotAt], *, reduced: bool = True
    ) -> None:
        self.program = program
        self.shots = shots
        self._shot_at = shot_at
        kept = live(program, shots.reads(shot_at)) if reduced else [-1] * len(program.nodes)
        self._keys = Keys(program, kept)
        self._width, self._every = self._keys.width, self._keys.every
        self._counts = {name: program.counts(name) for name in program.library.pathways}
        self._stacks: list[tuple[int, ...]] = [()]
        self._stack_of: dict[tuple[int, ...], Stack] = {(): 0}
        self._laid: dict[SpotNumber, Laid] = {}
        self._passing: dict[SpotNumber, Passing] = {}
        self._number_of: dict[Key, int] = {}
        self._key_of: list[Key] = []
        self.marks: list[int] = []
        """What the search has found out of each state."""
        self.at = array("i")
        """The node of each state."""
        self.begin = array("i")
        self.count = array("i")
        self.targets = array("i")
        self.shot_of = array("i")
        self.ends: dict[int, Shot] = {}
        """States at an outcome where the walk ends, and the shot of the last moments."""
        self.stuck: list[int] = []
        """States that are no outcome and yet have no move."""

    def __len__(self) -> int:
        return len(self._key_of)

    def first(self) -> int:
        """Return the state at the entry."""
        counter = self.program.counters.get(self.program.nodes[0].place)
        bits = self.program.first_bits + (1 << counter.shift if counter else 0)
        key = self._keys.key(0, 0, bits)
        state = self._number_of.get(key)
        return self._behind(key) if state is None else state

    def place(self, state: int) -> Place:
        """Return the step a state is at."""
        return self.program.nodes[self.at[state]].place

    def open(self, state: int) -> None:
        """Find the edges of a state, if they are not known yet."""
        self.open_all((state,))

    def open_all(self, states: Iterable[int]) -> None:
        """Find the edges of some states, of those of which they are not known yet."""
        targets, number_of, key_of = self.targets, self._number_of, self._key_of
        begins, count, laid_at, width = self.begin, self.count, self._laid, self._width
        for state in states:
            if begins[state] != NOT_OPEN:
                continue
            begins[state] = begin = len(targets)
            key = key_of[state]
            shot_at, moves = laid_at.get(key >> width) or self._lay(key >> width)
            if moves is None:
                self._open_by_hand(key)
                count[state] = len(targets) - begin
                continue
            for needs, keep, add, due, place in moves:
                if key & needs:
                    after = key & keep | add
                    target = number_of.get(after)
                    if target is not None:
                        targets.append(target)
                    elif after & due == due:
                        targets.append(self._met(after, place))
                    else:
                        targets.append(self._settled(after))
            count[state] = edges = len(targets) - begin
            shot = shot_at if isinstance(shot_at, int) else shot_at(key)
            self.shot_of.extend([shot] * edges)

    def _lay(self, spot: SpotNumber) -> Laid:
        laid = self._laid[spot] = self._keys.laid(spot, self._shot_at)
        return laid

    def _open_by_hand(self, key: Key) -> None:
        """Find the edges of a state whose moves hang on counts, or their shots on the answer."""
        stack, place = self._keys.apart(key >> self._width)
        bits, shot_at = key & self._every, self._shot_at[place]
        for told, there, onto, after in self._moves(place, stack, bits):
            shot = shot_at if isinstance(shot_at, int) else shot_at(told)
            key = self._keys.key(there, onto, after)
            target = self._number_of.get(key)
            self.targets.append(self._behind(key) if target is None else target)
            self.shot_of.append(shot)

    def _moves(self, place: int, stack: Stack, bits: int) -> Iterator[tuple[int, int, Stack, int]]:
        """Yield of every move the bits it is judged by, and the node, stack and bits led to."""
        node, call = self.program.nodes[place], self.program.calls.get(place)
        if call is not None:
            onto = self._onto(stack, place) if call.back else 0
            there, after = call.enter(bits & ~self._counts[call.pathway])
            yield bits, there, onto, after
        elif node.ways:
            for _, needs, keep, add, enter in node.ways:
                if not needs or bits & needs:
                    told = bits & keep | add
                    there, after = enter(told)
                    yield told if node.asked else bits, there, stack, after
        else:
            for _, there, after in node.onward(bits):
                yield bits, there, stack, after

    def _onto(self, stack: Stack, place: int) -> Stack:
        onto = (*self._stacks[stack], place)
        found = self._stack_of.get(onto)
        if found is None:
            found = self._stack_of[onto] = len(self._stacks)
            self._stacks.append(onto)
        return found

    def _settled(self, key: Key) -> int:
        """Return the state that stands behind a key once all is done that needs no move."""
        for _ in range(MOST_TURNS):
            turn = self._turn(key)
            if turn is None:
                break
            keep, into, due, place = turn
            key = key & keep | into
            state = self._number_of.get(key)
            if state is not None:
                return state
            if key & due == due:
                return self._met(key, place)
        return self._behind(key)

    def _turn(self, key: Key) -> Turn | None:
        """Return how a walk goes on in silence from a key, if that is told by its bits alone."""
        spot = key >> self._width
        passing = self._passing.get(spot)
        if passing is None:
            passing = self._passing[spot] = self._keys.passing(spot)
        rows, masks, otherwise, not_known = passing
        for gone, turn in rows:
            if not key & gone:
                return turn
        for some in masks:
            if all(key & mask for mask in some):
                return not_known
        return otherwise

    def _behind(self, key: Key) -> int:
        """Return the same for any key, counts and all."""
        passed: set[Key] = set()
        while key not in passed:
            state = self._number_of.get(key)
            if state is not None:
                return state
            place = self._keys.place(key)
            if key & self._keys.due[place] == self._keys.due[place]:
                return self._met(key, place)
            passed.add(key)
            onward = self._silently(key)
            if onward is None:
                return self._met_last(key)
            key = onward
        return self._met_stuck(key)

    def _silently(self, key: Key) -> Key | None:
        """Return where what needs no move leads on from a key; `None` where it stands."""
        stack, place = self._keys.apart(key >> self._width)
        node = self.program.nodes[place]
        if isinstance(node.step, Action | Handover):
            return None
        bits = key & self._every
        onward = node.onward(bits)
        if onward and onward[0][0] is None:
            _, there, after = onward[0]
            return self._keys.key(there, stack, after)
        return None if onward or not stack else self._back(place, stack, bits)

    def _back(self, place: int, stack: Stack, bits: int) -> Key | None:
        """Return where an outcome comes back to, if it does."""
        node = self.program.nodes[place]
        *outer, handover = self._stacks[stack]
        if not isinstance(node.step, Outcome):
            return None
        enter = self.program.calls[handover].back.get(node.place.step)
        if enter is None:
            return None
        there, after = enter(bits)
        return self._keys.key(there, self._stack_of[tuple(outer)], after)

    def _met(self, key: Key, place: int) -> int:
        state = self._number_of[key] = len(self._key_of)
        if state == len(self.marks):
            self._make_room()
        self._key_of.append(key)
        self.at.append(place)
        return state

    def _make_room(self) -> None:
        self.marks += NO_MARKS
        self.begin.extend(NOT_OPENED)
        self.count.extend(NO_MARKS)

    def _met_last(self, key: Key) -> int:
        """Note a state that may be an outcome, or at a branch that has no way."""
        place = self._keys.place(key)
        state = self._met(key, place)
        node = self.program.nodes[place]
        if isinstance(node.step, Outcome):
            shot_at = self._shot_at[place]
            self.ends[state] = shot_at if isinstance(shot_at, int) else shot_at(key & self._every)
            self.begin[state] = 0
        elif isinstance(node.step, Branch):
            self.stuck.append(state)
            self.begin[state] = 0
        return state

    def _met_stuck(self, key: Key) -> int:
        """Note a state from which a walk goes round in silence."""
        state = self._met(key, self._keys.place(key))
        self.stuck.append(state)
        self.begin[state] = 0
        return state
