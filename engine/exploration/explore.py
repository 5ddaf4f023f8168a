"""Breadth first over every state. A pathway that a handover comes back from is explored once for

each way of entering it, and its results are used wherever it is entered so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from heapq import heappop, heappush

from chamberwise.engine.exploration.frame import Frame, frames
from chamberwise.engine.exploration.liveness import mark_live
from chamberwise.engine.exploration.program import DONE, Call, Node, Program, compiled
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Branch, Handover, Outcome, PathwayId, StepId

MOST_STATES = 1_000_000
LOOK_UP_EVERY = 50
HEAD_START = 50
"""How far a state that shows something new stands before others when only looking."""

Parent = tuple[int, str | None, int | None]
"""The state before, the move made there, and the state over there that it came back from."""


Effect = tuple[int, int]
"""`keep` and `add`: bits become `bits & keep | add`."""


@dataclass(slots=True)
class Stretch:
    """Steps walked from one way of entering, the outermost to the end: its states, its exits.

    Each exit is told once, with its effect on the bits it was entered with and the state there.
    """

    frame: Frame | None = None
    known: dict[tuple[int, int], int] = field(default_factory=dict)
    outcomes: dict[tuple[StepId, Effect], int] = field(default_factory=dict)
    for_good: dict[tuple[int, Effect], int] = field(default_factory=dict)
    """By the node of a handover that does not come back."""


@dataclass(slots=True)
class Seen:
    """Of all states at one node: the bits some leaves possible, those some rules out, and whether

    a question is ever put there.
    """

    possible: int = 0
    ruled_out: int = 0
    asked: bool = False


@dataclass(slots=True)
class Explored:
    """The states found, by number. `leaves` marks those where the stretch is left or ends.

    `stopped` is true when there were more states than the limit: then nothing is proved.
    """

    program: Program
    nodes: list[int] = field(default_factory=list)
    bits: list[int] = field(default_factory=list)
    parents: list[Parent] = field(default_factory=list)
    leads_to: list[list[int]] = field(default_factory=list)
    leaves: list[bool] = field(default_factory=list)
    stopped: bool = False
    seen: dict[int, Seen] = field(default_factory=dict)
    """By node, what is true of all states there together."""
    undecided: list[int] = field(default_factory=list)
    """States at a branch that has no way for what is known."""

    def __len__(self) -> int:
        return len(self.nodes)

    def at_node(self, state: int) -> Place:
        """Return the step a state is at."""
        return self.program.nodes[self.nodes[state]].place

    def seen_in(self, pathway: PathwayId) -> Iterator[tuple[StepId, Seen]]:
        """Yield the steps of a pathway that some walk comes to, with what is true there."""
        for node, seen in self.seen.items():
            place = self.program.nodes[node].place
            if place.pathway == pathway:
                yield place.step, seen

    def way_to(self, state: int) -> list[tuple[Place, str]]:
        """Return the moves of a walk to a state: at which step, which move."""
        return self._since(state, 0)

    def _since(self, state: int, first: int) -> list[tuple[Place, str]]:
        legs: list[list[tuple[Place, str]]] = []
        while state != first:
            before, move, over_there = self.parents[state]
            if over_there is not None:
                legs.append(self._since(over_there, self._first_of(over_there)))
            if move is not None:
                legs.append([(self.at_node(before), move)])
            state = before
        return [step for leg in reversed(legs) for step in leg]

    def _first_of(self, state: int) -> int:
        """Return the first state of the stretch a state belongs to."""
        pathway = self.at_node(state).pathway
        while self.at_node(self.parents[state][0]).pathway == pathway and state:
            state = self.parents[state][0]
        return state


Enough = Callable[["Explored"], bool]


def explore(library: Library, pathway: PathwayId, most: int = MOST_STATES) -> Explored:
    """Return every state a walk from the entry of a pathway can come to."""
    return _searched(library, pathway, most, None)


def look(library: Library, pathway: PathwayId, enough: Enough) -> Explored:
    """Return some states, what shows something new first, until they are `enough`."""
    return _searched(library, pathway, MOST_STATES, enough)


def _searched(library: Library, pathway: PathwayId, most: int, enough: Enough | None) -> Explored:
    program = compiled(library, pathway)
    mark_live(program)
    counter = program.counters.get(program.nodes[0].place)
    first = program.first_bits + (1 << counter.shift if counter else 0)
    search = _Search(Explored(program), frames(program), most, enough)
    search.walk(Stretch(), 0, first, (0, None, None))
    return search.found


class _Search:
    def __init__(
        self,
        found: Explored,
        frames_of: dict[PathwayId, Frame],
        most: int,
        enough: Enough | None,
    ) -> None:
        self.enough = enough
        self.found = found
        self.frames = frames_of
        self.most = most
        self.inner: dict[tuple[int, int], Stretch] = {}
        self.news: set[int] = set()
        findings = found.program.layout.every
        self.live = [(node.live, findings & ~node.live) for node in found.program.nodes]

    def walk(self, stretch: Stretch, node: int, bits: int, by: Parent) -> None:
        """Meet every state of a stretch, nearest first."""
        found, nodes = self.found, self.found.program.nodes
        waiting: list[int] = []
        self._meet(stretch, waiting, node, bits, by)
        for state in waiting if self.enough is None else self._least_seen_first(stretch, waiting):
            if len(found.nodes) >= self.most:
                found.stopped = True
                return
            place = found.nodes[state]
            at = nodes[place]
            onward = at.onward(found.bits[state])
            found.leads_to[state] = [
                self._meet(stretch, waiting, there, after, (state, move, None))
                for move, there, after in onward
            ]
            if len(onward) > 1 or (onward and onward[0][0] is not None):
                found.seen[place].asked = True
            elif not onward:
                self._leave(stretch, waiting, at, state)

    def _least_seen_first(self, stretch: Stretch, waiting: list[int]) -> Iterator[int]:
        """Yield the states met: those that show something new, then those at steps met least."""
        queue: list[tuple[int, int]] = []
        times: dict[int, int] = {}
        turn = 0
        while waiting or queue:
            for state in waiting:
                node = self.found.nodes[state]
                times[node] = times.get(node, 0) + 1
                ahead = HEAD_START if state in self.news else 0
                heappush(queue, (times[node] - ahead, -state))
            waiting.clear()
            turn += 1
            is_time = stretch.frame is None and not turn % LOOK_UP_EVERY
            if is_time and self.enough and self.enough(self.found):
                return
            yield -heappop(queue)[1]

    def _meet(self, stretch: Stretch, waiting: list[int], node: int, bits: int, by: Parent) -> int:
        live, dead = self.live[node]
        bits = bits & live | dead
        key = (node, bits)
        known = stretch.known
        if key in known:
            return known[key]
        found = self.found
        state = known[key] = len(found.nodes)
        found.nodes.append(node)
        found.bits.append(bits)
        found.parents.append(by)
        found.leads_to.append([])
        found.leaves.append(False)
        waiting.append(state)
        seen = found.seen.get(node) or found.seen.setdefault(node, Seen())
        if bits & ~seen.possible or ~(bits | seen.ruled_out):
            self.news.add(state)
            seen.possible |= bits
            seen.ruled_out |= ~bits
        return state

    def _leave(self, stretch: Stretch, waiting: list[int], node: Node, state: int) -> None:
        """Go on from a state without a move of its own: a handover, an outcome, or a dead end."""
        found = self.found
        if isinstance(node.step, Handover):
            call = found.program.calls[found.nodes[state]]
            found.leads_to[state] = list(self._hand_over(stretch, waiting, call, state))
        elif isinstance(node.step, Outcome):
            found.leaves[state] = True
            if stretch.frame:
                exit_by = node.place.step, stretch.frame.effect(found.bits[state])
                stretch.outcomes.setdefault(exit_by, state)
        elif isinstance(node.step, Branch):
            found.undecided.append(state)

    def _hand_over(
        self, stretch: Stretch, waiting: list[int], call: Call, state: int
    ) -> Iterator[int]:
        bits = self.found.bits[state]
        if not call.back:
            node = self.found.nodes[state]
            yield from self._go_for_good(stretch, waiting, node, bits, (state, DONE, None))
            return
        over_there = self._over_there(call, state)
        for (outcome, (keep, add)), end in over_there.outcomes.items():
            enter = call.back.get(outcome)
            if enter is None:
                self.found.leaves[state] = True
            else:
                node, after = enter(bits & keep | add)
                yield self._meet(stretch, waiting, node, after, (state, DONE, end))
        for (onward, (keep, add)), end in over_there.for_good.items():
            after, by = bits & keep | add, (state, DONE, end)
            yield from self._go_for_good(stretch, waiting, onward, after, by)

    def _over_there(self, call: Call, state: int) -> Stretch:
        frame = self.frames[call.pathway]
        node, bits = call.enter(self.found.bits[state] & frame.reads)
        live, dead = self.live[node]
        bits = bits & live | dead
        stretch = self.inner.get((node, bits))
        if stretch is None:
            stretch = self.inner[node, bits] = Stretch(frame)
            self.walk(stretch, node, bits, (state, DONE, None))
        return stretch

    def _go_for_good(
        self, stretch: Stretch, waiting: list[int], handover: int, bits: int, by: Parent
    ) -> Iterator[int]:
        if stretch.frame is None:
            call = self.found.program.calls[handover]
            node, bits = call.enter(bits & self.found.program.layout.every)
            yield self._meet(stretch, waiting, node, bits, by)
        else:
            self.found.leaves[by[0]] = True
            stretch.for_good.setdefault((handover, stretch.frame.effect(bits)), by[0])


def trapped(found: Explored) -> Iterator[int]:
    """Yield every state from which the stretch can never be left."""
    before: list[list[int]] = [[] for _ in found.nodes]
    for state, targets in enumerate(found.leads_to):
        for target in targets:
            before[target].append(state)
    is_free = list(found.leaves)
    free = [state for state, leaves in enumerate(is_free) if leaves]
    while free:
        for earlier in before[free.pop()]:
            if not is_free[earlier]:
                is_free[earlier] = True
                free.append(earlier)
    return (state for state, out in enumerate(is_free) if not out)
