"""All rules on all walks, spot by spot, where nothing has to be known of how long a walk is.

Whoever comes to a spot waits there until nobody is left at earlier ones, so that most states come
up once. Then all of them go on together: what a move does is the same for all of one spot.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence

from chamberwise.engine.exploration.program import Door, Entering, Node, Program, Way
from chamberwise.engine.exploration.wanted import go_on_if_wanted
from chamberwise.engine.model.step import Action, Branch, Handover, Outcome, Question, Step
from chamberwise.engine.proof.carried import Carried, Images, Joined
from chamberwise.engine.proof.front import Front, far_apart, with_some_of_each
from chamberwise.engine.proof.outlook import Outlook
from chamberwise.engine.proof.shots import NO_SHOT, Shot
from chamberwise.engine.proof.spots import FIRST, Spot
from chamberwise.engine.proof.watched import Watched


class Sweep:
    """One search under way."""

    def __init__(
        self, outlook: Outlook, most: int, a_spot: int | None = None, *, keeps: bool = False
    ) -> None:
        ground = outlook.ground
        self.ground = ground
        self.outlook = outlook
        self.view = outlook.view
        self.program: Program = ground.program
        self.spots = ground.spots
        self.shot_at = outlook.shot_at
        self.kept = outlook.kept
        self.most = most
        self.a_spot = a_spot
        """How many of those that wait at a spot are gone on with; none: all."""
        self.found = Watched()
        self.carried = Carried(outlook.shots, self.found)
        self.images: dict[Shot, Images] = {}
        self.retired = 0
        """How many machines were watched no longer when the images were last cleared."""
        self.joined = Joined(self.carried)
        self.waiting: dict[Spot, Front] = {}
        self.met: dict[Spot, Front] = {}
        """What was gone on with: at the spots of this ring, or at all where it `keeps` that."""
        self.keeps = keeps

    def run(self) -> Watched:
        """Go through everything, ring by ring."""
        self._enter(FIRST, (self.ground.first(),), (self.carried.first(),))
        for ring in self.ground.rings:
            self._go_round(ring)
            if not self.keeps:
                self.met.clear()
            if 0 < len(self.outlook.watching) == len(self.found.broken):
                break  # all is known
        return self.found

    def _go_round(self, ring: Sequence[Spot]) -> None:
        """Go on from all spots of a ring, until nobody waits at any of them."""
        has_moved = True
        while has_moved and not self.found.stopped:
            has_moved = False
            for spot in ring:
                front = self.waiting.pop(spot, None)
                if front is not None:
                    has_moved = True
                    self._go_on(spot, front)

    def _go_on(self, spot: Spot, front: Front) -> None:
        """Go on from a spot with what is new there."""
        go_on_if_wanted()
        known = self.met.get(spot)
        if known is None:
            self.met[spot] = new = self._some(front)
        else:
            new, again = self._news(known, front)
            self._pass(spot, again)
        self.found.states += self._pass(spot, new)
        self.found.stopped = self.found.states > self.most

    def _news(self, known: Front, front: Front) -> tuple[Front, Front]:
        """Add what is new to what is known; return the new states, and others that bring more."""
        carried = self.carried
        new, again = Front(), Front()
        for bits, number in front.items():
            before = known.get(bits)
            if before is None:
                new[bits] = number
            elif before != number and carried.has_news(before, number):
                again[bits] = number
                known[bits] = self.joined[before, number]
        new = self._some(new)
        known.update(new)
        return new, again

    def _some(self, front: Front) -> Front:
        """Return as many states as are gone on with."""
        return front if self.a_spot is None else far_apart(front, self.a_spot)

    def _pass(self, spot: Spot, front: Front) -> int:
        """Make every move from a spot; return how many of those there had one due, or ended."""
        node = self.program.nodes[spot % self.spots.size]
        if not front or spot % self.spots.size in self.outlook.beyond:
            return len(front)
        if node.door:
            return self.door(spot, node.door, front)
        return _PASSING[type(node.step)](self, spot, node, front)

    def door(self, spot: Spot, door: Door, front: Front) -> int:
        """Let all through a door, by their counts where those are looked at."""
        base = spot - spot % self.spots.size
        counter = door.counter
        if counter is None or not counter.mask & self.view:
            self._enter(base + door.inside, front, front.values())
            self._enter(base + door.past, front, front.values())
            return 0
        once, full = 1 << counter.shift, counter.at_most << counter.shift
        within = [bits for bits in front if bits & counter.mask < full]
        past = [bits for bits in front if bits & counter.mask >= full]
        numbers = [front[bits] for bits in within]
        self._enter(base + door.inside, [bits + once for bits in within], numbers)
        self._enter(base + door.past, past, [front[bits] for bits in past])
        return 0

    def question(self, spot: Spot, node: Node, front: Front) -> int:
        """Put a question to whom it is open, and let the others pass."""
        every = node.asked & self.view
        base = spot - spot % self.spots.size
        if not every:
            self._answer(spot, node.ways, front)
            for _, needs, _, _, enter in node.ways:
                if needs:
                    self._enter(base + enter.last, front, front.values())
            return len(front)
        narrowed = [bits for bits in front if bits & every != every]
        if not narrowed:
            self._answer(spot, node.ways, front)
            return len(front)
        rest = {bits: front[bits] for bits in narrowed}
        for _, needs, _, _, enter in node.ways:
            if needs:
                rest = self._sure(rest, every & ~needs, base + enter.last)
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
            self._enter(spot - place + enter.last, front, after, keep, add)

    def action(self, spot: Spot, node: Node, front: Front) -> int:
        """Do an action."""
        place = spot % self.spots.size
        numbers = self._after(place, front, front.values())
        for _, _, keep, add, enter in node.ways:
            self._enter(spot - place + enter.last, front, numbers, keep, add)
        if node.narrowing:
            effect, enter = node.narrowing
            self._enter(spot - place + enter.last, [effect(bits) for bits in front], numbers)
        return len(front)

    def handover(self, spot: Spot, node: Node, front: Front) -> int:
        """Go over to another pathway, whose counts begin anew."""
        place = spot % self.spots.size
        call = self.program.calls[place]
        numbers = self._after(place, front, front.values())
        keep = ~self.ground.counts[call.pathway]
        self._enter(self.spots.onto(spot) + call.enter.last, front, numbers, keep)
        return len(front)

    def branch(self, spot: Spot, node: Node, front: Front) -> int:
        """Take the ways of a branch that are open; return how many have none."""
        base, view = spot - spot % self.spots.size, self.view
        masks, shutting = list[Sequence[int]](), list[Sequence[int]]()
        for gone, terms, enter in node.rows:
            looked_at = [mask for every, mask in terms if every & view]
            masks.append(looked_at)
            rest = self._sure(front, gone & view, base + enter.last)
            if len(looked_at) == len(terms):
                front = rest
                shutting.append(looked_at)
        if node.otherwise is node.not_known:
            return self._rest(node.otherwise, base, front)
        open_still = with_some_of_each(front, masks)
        shut = open_still if len(shutting) == len(masks) else with_some_of_each(front, shutting)
        otherwise = {bits: number for bits, number in front.items() if bits not in shut}
        standing = self._rest(node.otherwise, base, otherwise)
        return standing + self._rest(node.not_known, base, open_still)

    def _rest(self, enter: Entering | None, base: Spot, front: Front) -> int:
        if enter is None:
            return len(front)
        self._enter(base + enter.last, front, front.values())
        return 0

    def _sure(self, front: Front, gone: int, there: Spot) -> Front:
        """Let those go on of whom some bits are gone; return the others."""
        sure = [bits for bits in front if not bits & gone]
        if not sure:
            return front
        self._enter(there, sure, [front[bits] for bits in sure])
        return {bits: number for bits, number in front.items() if bits & gone}

    def outcome(self, spot: Spot, node: Node, front: Front) -> int:
        """Go back to where a handover came from, or end."""
        back = self.spots.back(spot)
        if back is not None:
            handover, base = back
            enter = self.program.calls[handover].back.get(node.place.step)
            if enter is not None:
                self._enter(base + enter.last, front, front.values())
                return 0
        numbers = self._after(spot % self.spots.size, front, front.values())
        if self.ground.is_end(node.place):
            for number in set(numbers):
                self.carried.end(number)
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
            images = self._images(shot_at)
            return [images[number] for number in numbers]
        read = [bits & shot_at.reads for bits in each]
        by_bits = {bits: self._images(shot_at(bits)) for bits in set(read)}
        return [by_bits[bits][number] for bits, number in zip(read, numbers, strict=True)]

    def _images(self, shot: Shot) -> Images:
        images = self.images.get(shot)
        if images is None:
            images = self.images[shot] = Images(self.carried, shot)
        return images

    def _enter(
        self,
        there: Spot,
        each: Collection[int],
        numbers: Collection[int],
        keep: int = -1,
        add: int = 0,
    ) -> None:
        """Let some wait at a spot, once bits are kept and added."""
        joined = self.joined
        front = self.waiting.setdefault(there, {})
        live, dead = self.kept[there % self.spots.size]
        keep, add = keep & live, add & live | dead
        for bits, number in zip(each, numbers, strict=True):
            after = bits & keep | add
            known = front.setdefault(after, number)
            if known != number:
                front[after] = joined[known, number]


_PASSING: Mapping[type[Step], Callable[[Sweep, Spot, Node, Front], int]] = {
    Question: Sweep.question,
    Action: Sweep.action,
    Branch: Sweep.branch,
    Handover: Sweep.handover,
    Outcome: Sweep.outcome,
}
