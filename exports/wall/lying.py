"""Where a unit keeps what the steps of its chart need."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.chart.ways import ways
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, WallChart
from chamberwise.engine.model.step import Action, StepId
from chamberwise.exports.control.extract import place_told
from chamberwise.exports.wall.content import Place


def places(library: Library, pathway: Pathway, chart: WallChart) -> Iterator[Place]:
    """Yield each thing that the unit has a place for, in the order in which it is needed."""
    local, words = library.local_to(pathway.id), library.words(pathway.id)
    needed: dict[str, dict[int, None]] = {}
    for row, need in _needs(library, pathway, chart):
        needed.setdefault(need, {})[row] = None
    for need, rows in needed.items():
        told = place_told(local, need)
        if local is not None and told and need in words.kit:
            product = local.products[need].product
            yield Place(words.kit[need].title, f"{product}. {told}", tuple(rows))


def _needs(library: Library, pathway: Pathway, chart: WallChart) -> Iterator[tuple[int, str]]:
    """Yield what is needed by the first actions, as row 0, and by each row and its ways out."""
    for name in chart.first:
        yield from ((0, need) for need in _of(pathway, name))
    rows = frozenset(chart.spine)
    for number, name in enumerate(chart.spine, 1):
        done = (each for way in ways(library, pathway.id, name, rows) for each in way.done)
        for step in (name, *done):
            yield from ((number, need) for need in _of(pathway, step))


def _of(pathway: Pathway, name: StepId) -> tuple[str, ...]:
    step = pathway.steps[name]
    return step.needs if isinstance(step, Action) else ()
