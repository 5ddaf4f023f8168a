"""What an alignment is: moves of the run and of the model, side by side.

Names as in Adriansyah, Aligning Observed and Modeled Behavior (2014): a synchronous move is both at
once, a log move something the run has alone, a model move something the run has left out.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, Protocol, TypeVar

Node = TypeVar("Node", bound=Hashable)
Doing = TypeVar("Doing")


class Kind(StrEnum):
    """The three kinds of move; what the model does in silence is none."""

    SYNCHRONOUS = "synchronous"
    MODEL = "model"
    LOG = "log"


@dataclass(frozen=True, slots=True)
class Move(Generic[Doing]):
    """One move: the event's place in the run, the model's doing, or both."""

    kind: Kind
    event: int | None
    doing: Doing | None


@dataclass(frozen=True, slots=True)
class Alignment(Generic[Node, Doing]):
    """A cheapest alignment, what it costs, and where in the model it ends."""

    moves: tuple[Move[Doing], ...]
    cost: int
    end: Node


@dataclass(frozen=True, slots=True)
class Onward(Generic[Node, Doing]):
    """A way on in the model: what is left out on it, then what the event is taken for, if it is."""

    to: Node
    left_out: tuple[Doing, ...] = ()
    taken: Doing | None = None


class Net(Protocol[Node, Doing]):
    """A model as the search sees it. Silence must not go round."""

    @property
    def first(self) -> Node:
        """Where the model begins."""

    def onward(self, node: Node, event: int) -> Iterable[Onward[Node, Doing]]:
        """Return the ways on, those that take the event of that place in the run among them.

        `event` is the length of the run where nothing is left to take. Document order.
        """

    def may_end(self, node: Node) -> bool:
        """Whether the model may end here."""
