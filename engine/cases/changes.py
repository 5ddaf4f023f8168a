"""Where two walks of a flock end differently, for very many pairs at once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from chamberwise.engine.cases.flock import Arrival, Lanes, Said
from chamberwise.engine.cases.hang import Change


class Blocks:
    """The lanes of a flock in blocks of equal size, one lane of each a case."""

    def __init__(self, arrived: Mapping[Arrival, Lanes], size: int) -> None:
        self.size = size
        self.whole = (1 << size) - 1
        ended = [(each, lanes) for each, lanes in arrived.items() if each.outcome]
        self._by_plan = _joined((by_column(each.said), lanes) for each, lanes in ended)
        self._by_outcome = _joined((each.outcome, lanes) for each, lanes in ended)
        self._open = sum(
            lanes for each, lanes in arrived.items() if not each.outcome and not each.is_ruled_out
        )
        self._ended = sum(lanes for _, lanes in ended)

    def differences(self, block: int, other: int) -> Iterator[tuple[Change, Lanes]]:
        """Yield each change with the cases of which it is true between two blocks.

        Nothing is said of those that come to no outcome in the other block, nor of those whose
        answers the block cannot give.
        """
        judged = self._in(self._ended, other)
        yield Change.OPEN, judged & self._in(self._open, block)
        judged &= self._in(self._ended, block)
        yield Change.PLAN, judged & ~self._alike(self._by_plan, block, other)
        yield Change.OUTCOME, judged & ~self._alike(self._by_outcome, block, other)

    def _alike(self, results: list[Lanes], block: int, other: int) -> Lanes:
        alike = 0
        for lanes in results:
            alike |= self._in(lanes, block) & self._in(lanes, other)
        return alike

    def _in(self, lanes: Lanes, block: int) -> Lanes:
        return lanes >> block * self.size & self.whole


def by_column(said: Said) -> object:
    """Return what was said in a form that is equal where every column says the same in order."""
    columns: dict[str, tuple[str, ...]] = {}
    for column, text in said:
        columns[column] = (*columns.get(column, ()), text)
    return tuple(sorted(columns.items()))


def _joined(results: Iterable[tuple[object, Lanes]]) -> list[Lanes]:
    joined: dict[object, Lanes] = {}
    for result, lanes in results:
        joined[result] = joined.get(result, 0) | lanes
    return list(joined.values())
