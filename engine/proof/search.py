"""All rules in one search over states, shorter walks first.

Every state carries the set of all states of all machines that some walk brings there, as one
integer. Only what is new at a state is carried on, so that each pair of a state and a state of a
machine is gone through once.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from chamberwise.engine.exploration.wanted import go_on_if_wanted
from chamberwise.engine.model.library import Place
from chamberwise.engine.proof.monitors import Monitor
from chamberwise.engine.proof.shots import NO_SHOT, Shot
from chamberwise.engine.proof.states import States
from chamberwise.engine.proof.watched import Watched

NOBODY = 1
"""A mark that every state carries once it is met, whatever machines there are."""


class Search:
    """One search under way."""

    def __init__(
        self,
        states: States,
        monitors: Sequence[Monitor],
        most: int,
        is_end: Callable[[Place], bool],
    ) -> None:
        self.states = states
        self.monitors = monitors
        self.most = most
        self.is_end = is_end
        """Whether the operation ends at an outcome."""
        self.found = Watched()
        self.alive = sum(monitor.bits for monitor in monitors) | NOBODY
        self.settled = 0
        """The bits of machines of which all is known."""
        self.lost = sum(monitor.lost for monitor in monitors)
        self.not_good = sum(monitor.not_good for monitor in monitors)
        self.images: dict[Shot, dict[int, int]] = {}
        """Where each shot met takes a set, once worked out."""
        self.same: dict[int, int] = {}
        """Equal sets are kept once, for there are far fewer than states."""

    def by_length(self, *, stop_at_first: bool = False) -> Watched:
        """Go through everything, walks of fewer moves first, until every rule broke."""
        front = self._first()
        while front and not self._is_enough():
            go_on_if_wanted()
            self._at_ends(front)
            if stop_at_first and self.has_broken:
                break
            front = self._onward(front)
        self.found.states = len(self.states)
        return self.found

    def _first(self) -> dict[int, int]:
        start = sum(1 << each.shift for each in self.monitors if not each.is_instant) | NOBODY
        first = self.states.first()
        self.states.marks[first] = start
        return {first: start}

    def _is_enough(self) -> bool:
        self.found.stopped = len(self.states) > self.most
        return self.found.stopped or self.all_broken

    def _onward(self, front: dict[int, int]) -> dict[int, int]:
        """Make one move from every state in front; return what is new where they lead."""
        states, marks, settled = self.states, self.states.marks, self.settled
        begins, count, targets, shot_of = states.begin, states.count, states.targets, states.shot_of
        same, onward = self.same, dict[int, int]()
        states.open_all(front)
        for state, carried in front.items():
            if carried & settled:
                carried &= ~settled
            begin = begins[state]
            image, last = carried, NO_SHOT
            for edge in range(begin, begin + count[state]):
                target, shot = targets[edge], shot_of[edge]
                if shot != last:
                    image, last = self._image(shot, carried), shot
                mark = marks[target]
                if not mark:
                    marks[target] = onward[target] = image
                elif image & ~mark:
                    both = mark | image
                    marks[target] = same.setdefault(both, both)
                    onward[target] = onward.get(target, 0) | image & ~mark
        return onward

    def _image(self, shot: Shot, carried: int) -> int:
        """Return where a shot takes what is carried, but for machines that are lost by it."""
        images = self.images.get(shot)
        if images is None:
            images = self.images[shot] = {}
            self.found.broken.update(self.states.shots.loses[shot])
        image = images.get(carried)
        if image is None:
            after = self.states.shots.image(shot, carried)
            image = images[carried] = self.same.setdefault(after, after)
        if image & self.lost:
            self._lost(image)
            image &= self.alive
        return image

    def _at_ends(self, front: dict[int, int]) -> None:
        ends = self.states.ends
        for state in [state for state in front if state in ends]:
            image = self._image(ends[state], front[state] & self.alive)
            if image & self.not_good & self.alive and self.is_end(self.states.place(state)):
                self._unkept(image & self.alive)

    def _lost(self, bits: int) -> None:
        for number, monitor in enumerate(self.monitors):
            if monitor.lost & bits & self.alive:
                self.found.broken.add(number)
                self._retire(monitor)

    def _unkept(self, bits: int) -> None:
        for number, monitor in enumerate(self.monitors):
            if monitor.not_good & bits:
                self.found.broken.add(number)
                self._retire(monitor)

    def _retire(self, monitor: Monitor) -> None:
        self.alive &= ~monitor.bits
        self.settled |= monitor.bits
        self.lost &= self.alive

    @property
    def all_broken(self) -> bool:
        """Whether every rule broke on some walk gone through so far: longer ones tell nothing."""
        rules = {number for number, each in enumerate(self.monitors) if not each.is_trigger}
        return bool(rules) and rules <= self.found.broken

    @property
    def has_broken(self) -> bool:
        """Whether some rule broke on a walk gone through so far."""
        return any(not self.monitors[number].is_trigger for number in self.found.broken)
