"""What a search looks at: of some findings what is known, of some bounds the count.

Whatever else would be asked of what is known is left open: a question may be put or passed over, a
branch may take any way that what is looked at does not forbid, a door stands open both ways. So in
a view there are more walks than there are, never less, and what holds on them all holds.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import prod
from typing import TypeAlias

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.rule import AnyOf
from chamberwise.engine.model.step import Handover, PathwayId, Step
from chamberwise.engine.proof.spoken_of import spoken_of

View: TypeAlias = int
"""The bits looked at, of a finding or a count all or none."""

EVERYTHING: View = -1

MOST_TOGETHER = 3000
"""In how many ways what is known may come together in a view of several claims."""


def own_view(program: Program, entry: PathwayId, roles: Iterable[AnyOf]) -> View:
    """Return the least that has to be looked at to tell what some happenings are."""
    view: View = 0
    for field in spoken_of(program.library, entry, roles):
        view |= field.every | program.tracked.get(field.every, 0)
    return view


def known_view(program: Program, entry: PathwayId) -> View:
    """Return the view of all that is known, and of the counts that multiply states little: those

    of other pathways that lead for good into no more.
    """
    library = program.library
    view: View = program.layout.every | sum(program.tracked.values())
    for name, pathway in library.pathways.items():
        if name != entry and not any(map(_is_for_good, pathway.steps.values())):
            view |= program.counts(name)
    return view


def _is_for_good(step: Step) -> bool:
    return isinstance(step, Handover) and not step.on_return


def together(program: Program, views: Mapping[int, View]) -> list[tuple[View, list[int]]]:
    """Return few small views that hold some views, each with the numbers of those it holds."""
    alike: dict[View, list[int]] = {}
    for number, view in views.items():
        alike.setdefault(view, []).append(number)
    sizes = _Sizes(program)
    found: list[tuple[View, list[int]]] = []
    for wanted in sorted(alike, key=sizes.of, reverse=True):
        most = max(MOST_TOGETHER, sizes.of(wanted))
        joined = [(sizes.of(view | wanted), place) for place, (view, _) in enumerate(found)]
        size, place = min(joined, default=(most + 1, 0))
        if size > most:
            found.append((wanted, alike[wanted]))
        else:
            view, numbers = found[place]
            found[place] = view | wanted, numbers + alike[wanted]
    return found


class _Sizes:
    def __init__(self, program: Program) -> None:
        layout = program.layout
        self._fields = [
            field for each in (layout.shared, *layout.own.values()) for field in each.values()
        ]

    def of(self, view: View) -> int:
        """Return in how many ways what is known may come together in a view."""
        return prod(len(field.bits) + 1 for field in self._fields if field.every & view)
