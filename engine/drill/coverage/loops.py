"""How far drills go round the loops of their pathways: not at all, once, more than once.

Prime paths of a whole pathway are mostly too many to list, so only those within loops are, pathway
by pathway: that is where they ask for more than every answer given does. More of them stand on the
map than can really happen.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.drill.coverage.prime_paths import TooManyPathsError, prime_paths
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import PathwayId, StepId

Path = tuple[StepId, ...]


@dataclass(frozen=True, slots=True)
class Loops:
    """Rings of steps, how many some drill goes round, and how many twice running.

    `ways` are the prime paths within loops, rings among them; None where they are too many.
    """

    rings: int
    walked: int
    walked_again: int
    ways: int
    ways_walked: int


def loops(library: Library, drills: Iterable[Sequence[Place]]) -> Loops | None:
    """Return how far drills, each by its steps, go round loops; None where ways are too many."""
    stretches: dict[PathwayId, list[Path]] = {}
    for steps in drills:
        for pathway in dict.fromkeys(place.pathway for place in steps):
            own = tuple(place.step for place in steps if place.pathway == pathway)
            stretches.setdefault(pathway, []).append(own)
    try:
        found = [_of_pathway(library, pathway, own) for pathway, own in stretches.items()]
    except TooManyPathsError:
        return None
    return Loops(*(sum(column) for column in zip(*found, strict=True))) if found else None


def _of_pathway(
    library: Library, pathway: PathwayId, walks: Sequence[Path]
) -> tuple[int, int, int, int, int]:
    ways = [path for part in _parts(library, pathway) for path in prime_paths(part)]
    rings: dict[Path, list[Path]] = {}
    for path in ways:
        if path[0] == path[-1]:
            rings.setdefault(_turned(path), []).append(path)
    longest = max(map(len, ways), default=0)
    seen = {window for walk in walks for window in _windows(walk, longest)}
    walked = [any(each in seen for each in every) for every in rings.values()]
    again = [
        any(_twice(walk, each) for each in every if each in seen for walk in walks)
        for every in rings.values()
    ]
    return len(rings), sum(walked), sum(again), len(ways), sum(path in seen for path in ways)


def _parts(library: Library, pathway: PathwayId) -> Iterator[Mapping[StepId, Sequence[StepId]]]:
    """Yield the loops of a pathway as graphs: steps from each of which every other is reached."""
    import networkx as nx

    steps = library.pathways[pathway].steps
    ways = {name: [each.step for each in targets(step)] for name, step in steps.items()}
    graph = nx.DiGraph([(name, to) for name, found in ways.items() for to in found])
    for part in nx.strongly_connected_components(graph):
        inside = {name: [to for to in ways[name] if to in part] for name in steps if name in part}
        if any(inside.values()):
            yield inside


def _turned(ring: Path) -> Path:
    """Return a ring beginning at its first name, so that all its turns are one."""
    steps = ring[:-1]
    at = steps.index(min(steps))
    return (*steps[at:], *steps[:at])


def _windows(walk: Path, longest: int) -> Iterator[Path]:
    for start in range(len(walk)):
        for end in range(start + 1, min(len(walk), start + longest) + 1):
            yield walk[start:end]


def _twice(walk: Path, ring: Path) -> bool:
    """Whether a walk goes round a ring twice running."""
    long = len(ring) - 1
    twice = (*ring, *ring[1:])
    return any(walk[at : at + 2 * long + 1] == twice for at in range(len(walk) - 2 * long))
