"""All rules on all walks, spot by spot, where nothing has to be known of how long a walk is.

Whoever comes to a spot waits there until nobody is left at earlier ones, so that most states come
up once. Then all of them go on together: what a move does is the same for all of one spot.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from typing import TypeAlias

from chamberwise.engine.exploration.program import Entering, Node, Program, Way
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Action, Branch, Handover, Outcome, Question, Step
from chamberwise.engine.proof.carried import Carried, Images, Joined
from chamberwise.engine.proof.shots import NO_SHOT, Shot, ShotAt, Shots
from chamberwise.engine.proof.spots import FIRST, Spot, Spots, rings
from chamberwise.engine.proof.watched import Watched

Front: TypeAlias = dict[int, int]
"""By what is known, the number of the set of states of machines that walks bring along."""


class Sweep:
    """One search under way. What is live has to be marked before, or nothing is forgotten."""

    def __init__(
        self,
        program: Program,
        spots: Spots,
        shots: Shots,
        shot_at: Sequence[ShotAt],
        most: int,
        is_end: Callable[[Place], bool],
    ) -> None:
        self.program = program
        self.spots = spots
        self.shot_at = shot_at
        self.most = most
        self.is_end = is_end
        """Whether the operation ends at an outcome."""
        self.found = Watched()
        self.carried = Carried(shots, self.found)
        self.counts = {to: program.counts(to) for to in program.library.pathways}
        """By pathway the bits of its counts, which begin anew when it is handed over to."""
        self.images: dict[Shot, Images] = {}
        self.retired = 0
        """How many machines were watched no longer when the images were last cleared."""
        self.joined = Joined(self.carried)
        self.waiting: dict[Spot, Front] = {}
        findings = program.layout.every
        self.kept = [(node.live, findings & ~node.live) for node in program.nodes]
        """By node the bits that may still be read, and those set for what is forgotten."""

    def run(self) -> Watched:
        """Go through everything, ring by ring."""
        program = self.program
        counter = program.counters.get(program.nodes[FIRST].place)
        bits = program.first_bits + (1 << counter.shift if counter else 0)
        self._enter(Entering(FIRST), 0, (bits,), (self.carried.first(),))
        for ring in rings(self.spots):
            self._go_round(ring)
        return self.found

    def _go_round(self, ring: Sequence[Spot]) -> None:
        """Go on from all spots of a ring, until nobody waits at any of them."""
        met: dict[Spot, Front] = {}
        has_moved = True
        while has_moved and not self.found.stopped:
            has_moved = False
            for spot in ring:
                front = self.waiting.pop(spot, None)
                if front is not None:
                    has_moved = True
                    self._go_on(spot, front, met)

    def _go_on(self, spot: Spot, front: Front, met: dict[Spot, Front]) -> None:
        """Go on from a spot with what is new there."""
        found = self.found
        known = met.get(spot)
        if known is None:
            met[spot] = front
            found.states += self._pass(spot, front)
        else:
            new, again = self._news(known, front)
            found.states += self._pass(spot, new)
            self._pass(spot, again)
        found.stopped = found.states > self.most

    def _news(self, known: Front, front: Front) -> tuple[Front, Front]:
        """Add what is new to what is known; return the new states, and others that bring more."""
        carried = self.carried
        new, again = Front(), Front()
        for bits, number in front.items():
            before = known.get(bits)
            if before is None:
                new[bits] = known[bits] = number
            elif before != number and carried.has_news(before, number):
                again[bits] = number
                known[bits] = self.joined[before, number]
        return new, again

    def _pass(self, spot: Spot, front: Front) -> int:
        """Make every move from a spot; return how many of those there had one due, or ended."""
        node = self.program.nodes[spot % self.spots.size]
        if node.is_cut_off or not front:
            return len(front)
        if node.silent:
            for enter in node.silent:
                self._enter(enter, spot - spot % self.spots.size, front, front.values())
            return 0
        return _PASSING[type(node.step)](self, spot, node, front)

    def question(self, spot: Spot, node: Node, front: Front) -> int:
        """Put a question to whom it is open, and let the others pass."""
        every = node.asked
        narrowed = [bits for bits in front if bits & every != every]
        if not narrowed:
            self._answer(spot, node.ways, front)
            return len(front)
        rest = {bits: front[bits] for bits in narrowed}
        for _, needs, _, _, enter in node.ways:
            if needs:
                rest = self._sure(rest, every & ~needs, enter, spot)
        asked = {bits: number for bits, number in front.items() if bits & every == every}
        self._answer(spot, node.ways, asked)
        for possible in {bits & every for bits in rest}:
            ways = [way for way in node.ways if not way[1] or way[1] & possible]
            some = {bits: number for bits, number in rest.items() if bits & every == possible}
            self._answer(spot, ways, some)
        return len(asked) + len(rest)

    def _answer(self, spot: Spot, ways: Sequence[Way], front: Front) -> None:
        """Let all give each of some answers."""
        if not front:
            return
        place = spot % self.spots.size
        varies = not isinstance(self.shot_at[place], int)
        numbers = front.values() if varies else self._after(place, front, front.values())
        for _, _, keep, add, enter in ways:
            after = numbers
            if varies:
                after = self._after(place, [bits & keep | add for bits in front], numbers)
            self._enter(enter, spot - place, front, after, keep, add)

    def action(self, spot: Spot, node: Node, front: Front) -> int:
        """Do an action."""
        place = spot % self.spots.size
        numbers = self._after(place, front, front.values())
        for _, _, keep, add, enter in node.ways:
            self._enter(enter, spot - place, front, numbers, keep, add)
        if node.narrowing:
            effect, enter = node.narrowing
            self._enter(enter, spot - place, [effect(bits) for bits in front], numbers)
        return len(front)

    def handover(self, spot: Spot, node: Node, front: Front) -> int:
        """Go over to another pathway, whose counts begin anew."""
        place = spot % self.spots.size
        call = self.program.calls[place]
        numbers = self._after(place, front, front.values())
        keep = ~self.counts[call.pathway]
        self._enter(call.enter, self.spots.onto(spot), front, numbers, keep)
        return len(front)

    def branch(self, spot: Spot, node: Node, front: Front) -> int:
        """Take the way of a branch; return how many have none."""
        for gone, _, enter in node.rows:
            front = self._sure(front, gone, enter, spot)
        if node.otherwise is node.not_known:
            return self._rest(node.otherwise, spot, front)
        masks = [[mask for _, mask in terms] for _, terms, _ in node.rows]
        not_known = {
            bits: number
            for bits, number in front.items()
            if any(all(bits & mask for mask in row) for row in masks)
        }
        otherwise = {bits: number for bits, number in front.items() if bits not in not_known}
        standing = self._rest(node.otherwise, spot, otherwise)
        return standing + self._rest(node.not_known, spot, not_known)

    def _rest(self, enter: Entering | None, spot: Spot, front: Front) -> int:
        if enter is None:
            return len(front)
        self._enter(enter, spot - spot % self.spots.size, front, front.values())
        return 0

    def _sure(self, front: Front, gone: int, enter: Entering, spot: Spot) -> Front:
        """Let those go on of whom some bits are gone; return the others."""
        sure = [bits for bits in front if not bits & gone]
        if not sure:
            return front
        base = spot - spot % self.spots.size
        self._enter(enter, base, sure, [front[bits] for bits in sure])
        return {bits: number for bits, number in front.items() if bits & gone}

    def outcome(self, spot: Spot, node: Node, front: Front) -> int:
        """Go back to where a handover came from, or end."""
        back = self.spots.back(spot)
        if back is not None:
            handover, base = back
            enter = self.program.calls[handover].back.get(node.place.step)
            if enter is not None:
                self._enter(enter, base, front, front.values())
                return 0
        numbers = self._after(spot % self.spots.size, front, front.values())
        if self.is_end(node.place):
            for number in set(numbers):
                self.carried.end(number, node.place)
        return len(front)

    def _after(
        self, place: int, each: Collection[int], numbers: Collection[int]
    ) -> Collection[int]:
        """Return what walks bring along after a move, by what is known at it."""
        shot_at = self.shot_at[place]
        if shot_at == NO_SHOT:
            return numbers
        if self.carried.retired > self.retired:
            self.retired = self.carried.retired
            for images in self.images.values():
                images.clear()
        if isinstance(shot_at, int):
            images = self._images(shot_at, place)
            return [images[number] for number in numbers]
        read = [bits & shot_at.reads for bits in each]
        by_bits = {bits: self._images(shot_at(bits), place) for bits in set(read)}
        return [by_bits[bits][number] for bits, number in zip(read, numbers, strict=True)]

    def _images(self, shot: Shot, place: int) -> Images:
        images = self.images.get(shot)
        at = self.program.nodes[place].place
        if images is None:
            images = self.images[shot] = Images(self.carried, shot, at)
        images.place = at
        return images

    def _enter(
        self,
        enter: Entering,
        base: Spot,
        each: Collection[int],
        numbers: Collection[int],
        keep: int = -1,
        add: int = 0,
    ) -> None:
        """Let some wait at the step that they enter, once bits are kept and added."""
        if enter.chain:
            self._enter_counted(enter, base, [bits & keep | add for bits in each], numbers)
            return
        joined = self.joined
        front = self.waiting.setdefault(base + enter.last, {})
        live, dead = self.kept[enter.last]
        keep, add = keep & live, add & live | dead
        for bits, number in zip(each, numbers, strict=True):
            after = bits & keep | add
            known = front.setdefault(after, number)
            if known != number:
                front[after] = joined[known, number]

    def _enter_counted(
        self, enter: Entering, base: Spot, each: Collection[int], numbers: Collection[int]
    ) -> None:
        """Let each enter the step that its counts lead to."""
        entered: dict[int, tuple[list[int], list[int]]] = {}
        for bits, number in zip(each, numbers, strict=True):
            there, after = enter(bits)
            some, theirs = entered.setdefault(there, ([], []))
            some.append(after)
            theirs.append(number)
        for there, (some, theirs) in entered.items():
            self._enter(Entering(there), base, some, theirs)


_PASSING: Mapping[type[Step], Callable[[Sweep, Spot, Node, Front], int]] = {
    Question: Sweep.question,
    Action: Sweep.action,
    Branch: Sweep.branch,
    Handover: Sweep.handover,
    Outcome: Sweep.outcome,
}
