"""What walks show at each step, taken together, without remembering any walk.

The same sweep as the proof's, with nobody watching: several times faster a state than to keep the
way to each.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass

from chamberwise.engine.exploration.explored import Seen
from chamberwise.engine.exploration.program import Node
from chamberwise.engine.exploration.unswept import unswept
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Branch, PathwayId, StepId
from chamberwise.engine.proof.front import Front
from chamberwise.engine.proof.ground import ground_of
from chamberwise.engine.proof.outlook import Outlook, outlook
from chamberwise.engine.proof.spots import Spot
from chamberwise.engine.proof.sweep import Sweep
from chamberwise.engine.proof.view import EVERYTHING

MOST_STATES = 1_000_000


@dataclass(frozen=True, slots=True)
class Sighted:
    """By step, what is true of all states there that were looked at."""

    seen: Mapping[Place, Seen]
    states: int
    stopped: bool
    """Whether there were more states than the limit: then what was not seen may be there."""

    def __len__(self) -> int:
        return self.states

    def with_more(self, other: Sighted) -> Sighted:
        """Return this with what was seen on another look."""
        seen = {**self.seen}
        for place, each in other.seen.items():
            seen[place] = each.with_more(seen[place]) if place in seen else each
        return Sighted(seen, self.states + other.states, self.stopped or other.stopped)

    def seen_in(self, pathway: PathwayId) -> Iterator[tuple[StepId, Seen]]:
        """Yield the steps of a pathway that some walk comes to, with what is true there."""
        for place, seen in self.seen.items():
            if place.pathway == pathway:
                yield place.step, seen


def exits_end(library: Library) -> bool:
    """Whether past every bound that is used up there is at last a step that has none.

    Where such exits lead round, a sweep lets walks through that there are not.
    """
    for pathway in library.pathways.values():
        bounds = {step.id: step.bound for step in pathway.steps.values() if step.bound}
        for name in bounds:
            for _ in bounds:
                if name not in bounds:
                    break
                name = bounds[name].after_that
            if name in bounds:
                return False
    return True


@unswept()
def sighted(
    library: Library,
    pathway: PathwayId,
    a_spot: int | None = None,
    towards: frozenset[Place] = frozenset(),
    most: int = MOST_STATES,
) -> Sighted:
    """Return what walks from the entry of a pathway show, all of them or some from each step.

    `a_spot` is how many states of a step are gone on with at a time; left out, all. `towards` are
    the steps of which alone it is asked what is true there; left out, all. Where all states that
    come to these are seen, it is seen as well whether a branch among them has no way.
    """
    ground = ground_of(library, pathway, ())
    nodes = {at for at, node in enumerate(ground.program.nodes) if node.place in towards}
    if towards and not nodes:
        return Sighted({}, 0, False)
    by = outlook(ground, (), EVERYTHING, reduced=True, towards=nodes)
    sighting = _Sighting(by, most, a_spot, nodes if a_spot is None else frozenset())
    found = sighting.run()
    seen = {ground.program.nodes[at].place: each for at, each in sighting.seen.items()}
    return Sighted(seen, found.states, found.stopped)


class _Sighting(Sweep):
    def __init__(self, by: Outlook, most: int, a_spot: int | None, closely: Set[int]) -> None:
        super().__init__(by, most, a_spot)
        self.closely = closely
        """The nodes at which it is asked whether a branch has no way."""
        self.seen: dict[int, Seen] = {}

    def _pass(self, spot: Spot, front: Front) -> int:
        at = spot % self.spots.size
        node = self.program.nodes[at]
        if front and not node.door and at not in self.outlook.beyond:
            seen = self.seen.setdefault(at, Seen())
            self._see(seen, node, front)
            if at in self.closely and isinstance(node.step, Branch):
                seen.undecided |= any(not node.onward(bits) for bits in front)
        return super()._pass(spot, front)

    def _see(self, seen: Seen, node: Node, front: Front) -> None:
        some, all_of_them = 0, -1
        for bits in front:
            some |= bits
            all_of_them &= bits
        seen.possible |= some
        seen.ruled_out |= ~all_of_them
        seen.asked = seen.asked or (node.asked != 0 and any(_is_put(node, each) for each in front))


def _is_put(node: Node, bits: int) -> bool:
    """Whether a question is put to somebody who knows so much: it is open, and has an answer."""
    known = bits & node.asked
    is_open = known == node.asked or not any(
        needs and not known & ~needs for _, needs, *_ in node.ways
    )
    return is_open and any(not needs or known & needs for _, needs, *_ in node.ways)
