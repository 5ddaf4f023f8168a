"""Order, as pairs that were kept or broken. A harmless swap breaks none and costs nothing."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.drill.entries import Did
from chamberwise.engine.drill.run import Event, Run
from chamberwise.engine.model.drill import Order
from chamberwise.engine.model.words import ActId


@dataclass(frozen=True, slots=True)
class Orders:
    """The pairs by what became of them; a pair says nothing until its second act is done."""

    kept: tuple[Order, ...]
    broken: tuple[tuple[Order, Event], ...]
    """Each with the event that broke it."""
    not_applicable: tuple[Order, ...]
    swapped: tuple[Order, ...] = ()
    """Those the other way round that the book calls harmless: they count nowhere."""


def orders(run: Run) -> Orders:
    """Return what became of each pair of a run. What was done before it began came first."""
    before = {moment.act for moment in run.so_far if moment.act is not None}
    first: dict[ActId, tuple[int, Event]] = {}
    for number, event in enumerate(run.events):
        if isinstance(event.entry, Did):
            first.setdefault(event.entry.act, (number, event))
    kept: list[Order] = []
    broken: list[tuple[Order, Event]] = []
    swapped: list[Order] = []
    for order in (each for each in run.orders if each.then in first):
        then, event = first[order.then]
        if not order.is_hard:
            if order.first in first and first[order.first][0] > then:
                swapped.append(order)
            continue
        if order.first in before or (order.first in first and first[order.first][0] < then):
            kept.append(order)
        else:
            broken.append((order, event))
    left = tuple(order for order in run.orders if order.then not in first)
    return Orders(tuple(kept), tuple(broken), left, tuple(swapped))
