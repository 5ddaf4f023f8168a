"""The spots of a program: every node with the handovers to come back to, and the arrows between."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TypeAlias

from chamberwise.engine.exploration.program import Entering, Program
from chamberwise.engine.model.step import Outcome

Spot: TypeAlias = tuple[tuple[int, ...], int]
"""The handovers to come back to, outermost first, and a node."""

Arrows: TypeAlias = Mapping[Spot, Sequence[Spot]]

FIRST: Spot = (), 0


def arrows(program: Program) -> Arrows:
    """Return every arrow between spots, whatever is known or counted."""
    found: dict[Spot, list[Spot]] = {FIRST: []}
    waiting = [FIRST]
    while waiting:
        spot = waiting.pop()
        found[spot] = list(_onward(program, *spot))
        for target in found[spot]:
            if target not in found:
                found[target] = []
                waiting.append(target)
    return found


def ranks(spots: Arrows) -> dict[Spot, int]:
    """Return the spots in an order in which arrows lead forward, but for those that close a loop.

    It is the reverse of the order in which a search in depth leaves them.
    """
    left: list[Spot] = []
    met = {FIRST}
    path: list[tuple[Spot, Iterator[Spot]]] = [(FIRST, iter(spots[FIRST]))]
    while path:
        spot, targets = path[-1]
        target = next((each for each in targets if each not in met), None)
        if target is None:
            left.append(spot)
            path.pop()
        else:
            met.add(target)
            path.append((target, iter(spots[target])))
    return {spot: rank for rank, spot in enumerate(reversed(left))}


def _onward(program: Program, stack: tuple[int, ...], node: int) -> Iterator[Spot]:
    call = program.calls.get(node)
    if call is not None:
        onto = (*stack, node) if call.back else ()
        yield from ((onto, target) for target in _led_to(call.enter))
    elif stack and isinstance(program.nodes[node].step, Outcome):
        enter = program.calls[stack[-1]].back.get(program.nodes[node].place.step)
        if enter is not None:
            yield from ((stack[:-1], target) for target in _led_to(enter))
    else:
        yield from ((stack, target) for target in program.nodes[node].leads_to)


def _led_to(enter: Entering) -> Sequence[int]:
    return [*(node for node, _ in enter.chain), enter.last]
