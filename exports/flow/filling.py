"""What is laid goes into areas, one after the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.flow.block import Area, Laid
from chamberwise.exports.flow.laying import ways_out
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Item
from chamberwise.exports.printing.unfit import UnfitError


def fill(
    laid: Sequence[Laid], areas: Iterable[Area], head: Sequence[Laid] = ()
) -> list[tuple[Item, ...]]:
    """Return the items of each area that is used, in order; each begins with the head.

    Areas are as high as one another. Raises `UnfitError` when they run out.
    """
    waiting = [*laid]
    found = []
    for area in areas:
        taken = _taken(waiting, area.height - _height(head))
        if waiting and not taken:
            break
        found.append(placed((*head, *waiting[:taken]), area))
        waiting = waiting[taken:]
        if not waiting:
            return found
    raise UnfitError(_("The words do not fit on this paper at a readable size."), ways_out())


def fits(laid: Sequence[Laid], height: float) -> bool:
    """Whether all of it stands in one height."""
    return _height(laid) - (laid[-1].after if laid else 0.0) <= height + 0.001


def placed(laid: Iterable[Laid], area: Area) -> tuple[Item, ...]:
    """Return items one below the other from the top of an area."""
    return tuple(_placed(laid, area))


def _placed(laid: Iterable[Laid], area: Area) -> Iterator[Item]:
    y = area.y
    for each in laid:
        yield from (moved(item, area.x, y) for item in each.items)
        y += each.height + each.after


def _height(laid: Iterable[Laid]) -> float:
    return sum(each.height + each.after for each in laid)


def _taken(laid: Sequence[Laid], height: float) -> int:
    """Return how many stand in a height, none of them parted from what it keeps."""
    most = 0
    while most < len(laid) and fits(laid[: most + 1], height):
        most += 1
    kept = most
    while 0 < kept < len(laid) and laid[kept - 1].keeps_next:
        kept -= 1
    return kept or most
