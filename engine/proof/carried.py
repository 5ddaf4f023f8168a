"""Which states of the machines some walks bring along, by numbers instead of sets of bits.

There are far fewer such sets than states: what a shot does to one is worked out when it is first
asked for, and then looked up.
"""

from __future__ import annotations

from chamberwise.engine.proof.monitors import Monitor
from chamberwise.engine.proof.shots import Shot, Shots
from chamberwise.engine.proof.watched import Watched


class Carried:
    """The sets met so far, and what was found broken on the way."""

    def __init__(self, shots: Shots, found: Watched) -> None:
        self.retired = 0
        """How many machines are watched no longer, for all is known of them."""
        self._shots = shots
        self._found = found
        self._sets: list[int] = []
        self._number_of: dict[int, int] = {}
        self._alive = sum(monitor.bits for monitor in shots.monitors)
        self._lost = sum(monitor.lost for monitor in shots.monitors)
        self._not_good = sum(monitor.not_good for monitor in shots.monitors)

    def again(self, shots: Shots, found: Watched) -> Carried:
        """Return the same sets by the same numbers, for a search that goes on from them.

        What broke before is not watched again, for what walks brought along of it was not kept.
        """
        other = Carried(shots, found)
        other._sets, other._number_of = self._sets, self._number_of
        other._alive = self._alive
        other._lost, other._not_good = self._lost, self._not_good
        return other

    def first(self) -> int:
        """Return what every walk begins with."""
        each_first = (1 << each.shift for each in self._shots.monitors if not each.is_instant)
        return self._number(sum(each_first))

    def brings(self, number: int) -> int:
        """Return a set, as the bits of the states of machines."""
        return self._sets[number]

    def joined(self, one: int, other: int) -> int:
        """Return two sets together."""
        return self._number(self._sets[one] | self._sets[other])

    def has_news(self, known: int, other: int) -> bool:
        """Whether a set has anything that another has not."""
        return self._sets[other] & self._alive & ~self._sets[known] != 0

    def image(self, shot: Shot, number: int) -> int:
        """Return where a shot takes a set, but for machines that are lost by it."""
        after = self._shots.image(shot, self._sets[number] & self._alive)
        bad = after & self._lost
        if bad:
            for machine, monitor in enumerate(self._shots.monitors):
                if monitor.lost & bad:
                    self._found.broken.add(machine)
                    self._retire(monitor)
        return self._number(after & self._alive)

    def lose_at_once(self, shot: Shot) -> None:
        """Note which machines without memory a shot loses."""
        self._found.broken.update(self._shots.loses[shot])

    def end(self, number: int) -> None:
        """Note that walks end for good with a set."""
        bad = self._sets[number] & self._not_good
        if bad:
            for machine, monitor in enumerate(self._shots.monitors):
                if monitor.not_good & bad:
                    self._found.broken.add(machine)
                    self._retire(monitor)

    def _number(self, carried: int) -> int:
        found = self._number_of.get(carried)
        if found is None:
            found = self._number_of[carried] = len(self._sets)
            self._sets.append(carried)
        return found

    def _retire(self, monitor: Monitor) -> None:
        self.retired += 1
        self._alive &= ~monitor.bits
        self._lost &= self._alive
        self._not_good &= self._alive


class Joined(dict[tuple[int, int], int]):
    """Two sets together, by their numbers."""

    def __init__(self, carried: Carried) -> None:
        super().__init__()
        self._carried = carried

    def __missing__(self, pair: tuple[int, int]) -> int:
        found = self[pair] = self._carried.joined(*pair)
        return found


class Images(dict[int, int]):
    """Where one shot takes each set, by their numbers."""

    def __init__(self, carried: Carried, shot: Shot) -> None:
        super().__init__()
        self._carried = carried
        self._shot = shot
        carried.lose_at_once(shot)

    def __missing__(self, number: int) -> int:
        found = self[number] = self._carried.image(self._shot, number)
        return found
