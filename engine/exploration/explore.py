"""Every state a team can come to."""

from __future__ import annotations

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.exploration.frame import frames
from chamberwise.engine.exploration.liveness import mark_live
from chamberwise.engine.exploration.search import Search, Stretch
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId

MOST_STATES = 1_000_000


def explore(library: Library, pathway: PathwayId, most: int = MOST_STATES) -> Explored:
    """Return every state a walk from the entry of a pathway can come to."""
    program = compiled(library, pathway)
    mark_live(program)
    counter = program.counters.get(program.nodes[0].place)
    first = program.first_bits + (1 << counter.shift if counter else 0)
    search = Search(Explored(program), frames(program), most)
    search.walk(Stretch(), 0, first, (0, None, None))
    return search.found
