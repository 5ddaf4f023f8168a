"""Where a length is cut into windows that overlap: through as little text as possible."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import ceil
from typing import NamedTuple

OVERLAP = 12.0
"""Millimetres that two neighbours have in common, at least."""
STEP = 1.0


class Span(NamedTuple):
    """From where to where something reaches, in millimetres, and how bad it is to cut it."""

    begins: float
    ends: float
    weight: float = 1.0


def count(length: float, window: float, overlap: float = OVERLAP) -> int:
    """Return how many windows a length takes.

    >>> count(297, 186), count(186, 186)
    (2, 1)
    """
    if length <= window:
        return 1
    return ceil((length - overlap - 1e-9) / (window - overlap))


def windows(
    length: float, window: float, spans: Sequence[Span], overlap: float = OVERLAP
) -> tuple[Span, ...]:
    """Return the fewest windows that cover a length, in order.

    Windows may be shorter than they could be: the room to spare goes to cutting least, and then
    to making them even. What lies wholly in an overlap is whole on both sides and is not cut.
    """
    number = count(length, window, overlap)
    if number == 1:
        return (Span(0.0, length),)
    ends = (*_Ends(length, window, overlap, tuple(spans), number).best(1, 0.0).ends, length)
    begins = (0.0, *(end - overlap for end in ends))
    return tuple(map(Span, begins, ends))


class _Way(NamedTuple):
    cut: float
    uneven: float
    ends: tuple[float, ...]


@dataclass(slots=True)
class _Ends:
    """Where windows end, found from the last to the first; what was found is remembered."""

    length: float
    window: float
    overlap: float
    spans: tuple[Span, ...]
    number: int
    known: dict[tuple[int, float], _Way] = field(default_factory=dict)
    cuts: dict[float, float] = field(default_factory=dict)

    def best(self, place: int, begins: float) -> _Way:
        """Return the ends of all windows but the last, from the one at a place on."""
        if place == self.number:
            return _Way(0.0, 0.0, ())
        if (place, begins) not in self.known:
            ways = (self._onward(place, end) for end in self._candidates(place, begins))
            self.known[place, begins] = min(ways)
        return self.known[place, begins]

    def _onward(self, place: int, end: float) -> _Way:
        if end not in self.cuts:
            self.cuts[end] = cut(end, self.spans, self.overlap)
        rest = self.best(place + 1, end - self.overlap)
        uneven = abs(end - self._even(place)) + rest.uneven
        return _Way(self.cuts[end] + rest.cut, uneven, (end, *rest.ends))

    def _even(self, place: int) -> float:
        step = (self.length - self.overlap) / self.number
        return place * step + self.overlap

    def _candidates(self, place: int, begins: float) -> list[float]:
        """Every millimetre from which the windows left still reach the end."""
        left = self.number - place
        farthest = min(begins + self.window, self.length)
        nearest = max(self.length - left * (self.window - self.overlap), begins + 2 * self.overlap)
        steps = int(max(0.0, farthest - nearest) / STEP)
        return [farthest - STEP * step for step in range(steps + 1)]


def cut(place: float, spans: Sequence[Span], overlap: float = OVERLAP) -> float:
    """Return the weight of what is whole on neither side where a window ends at a place."""
    return sum(span.weight for span in spans if span.begins < place - overlap and span.ends > place)
