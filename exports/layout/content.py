"""What is laid out and what comes of it, in millimetres from top left."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

Point: TypeAlias = tuple[float, float]


class Node(NamedTuple):
    """A box of a fixed size, or a diamond in it."""

    name: str
    width: float
    height: float
    is_diamond: bool = False


class Link(NamedTuple):
    """An arrow between two nodes, by name."""

    start: str
    end: str


@dataclass(frozen=True, slots=True)
class Graph:
    """What to lay out; nodes in reading order. `is_across` runs from left to right."""

    nodes: tuple[Node, ...]
    links: tuple[Link, ...]
    is_across: bool = False
    gap: float = 3.0
    """Least room between two boxes of a rank."""
    rise: float = 4.5
    """Least room between two ranks."""


class Placed(NamedTuple):
    """A node and the place of its upper left corner."""

    node: Node
    x: float
    y: float


class Route(NamedTuple):
    """An arrow as a line along points, from the border of one node to that of another."""

    link: Link
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Layout:
    """A graph with its coordinates; `made_by` names what worked them out."""

    width: float
    height: float
    placed: tuple[Placed, ...]
    routes: tuple[Route, ...]
    made_by: str


class NoLayoutError(Exception):
    """This way of laying out cannot be used here; says why."""
