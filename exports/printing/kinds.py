"""Which room makes which kind of sheet; a room is imported when it is asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any, NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import Kind, Made, Order


class Room(NamedTuple):
    """A package with `make`, `text`, and `extract` in which a function takes out the content."""

    package: str
    extract: str


ROOMS: Mapping[Kind, Room] = {
    Kind.WALL_CHART: Room("chamberwise.exports.wall", "wall_chart"),
    Kind.POCKET_CARD: Room("chamberwise.exports.pocket", "pocket_card"),
    Kind.ROLE_CARDS: Room("chamberwise.exports.roles", "role_cards"),
    Kind.KIT_LIST: Room("chamberwise.exports.kit", "kit_list"),
    Kind.SCRIPT: Room("chamberwise.exports.script", "script"),
    Kind.CASE_TABLE: Room("chamberwise.exports.case_sheet", "case_table"),
    Kind.FULL: Room("chamberwise.exports.full", "full_pathway"),
}

USUAL: Mapping[Kind, Sized] = {
    Kind.WALL_CHART: Sized(Paper.A3),
    Kind.POCKET_CARD: Sized(Paper.A4, Turn.LANDSCAPE),
    Kind.ROLE_CARDS: Sized(Paper.A4, Turn.LANDSCAPE),
    Kind.KIT_LIST: Sized(Paper.A4, Turn.LANDSCAPE),
    Kind.CASE_TABLE: Sized(Paper.A4, Turn.LANDSCAPE),
}
"""What a kind is printed on where nobody says; else A4 portrait."""

ON_A4 = frozenset({Kind.POCKET_CARD, Kind.ROLE_CARDS})
"""Cards that are cut or folded from A4, whichever way round; other papers make no other card."""


class NotMadeError(Exception):
    """No room makes this kind yet; `args[0]` says which."""


def usual(kind: Kind) -> Sized:
    """Return the paper that a kind is printed on where nobody says."""
    return USUAL.get(kind, Sized(Paper.A4))


def maker(kind: Kind) -> Callable[[Order], Made]:
    """Return what lays a kind of sheet out. Raises `NotMadeError`."""
    made: Callable[[Order], Made] = _of_room(kind, "make", "make")
    return made


def teller(kind: Kind) -> Callable[[Order], str]:
    """Return what tells a kind of sheet as text, for a screen reader. Raises `NotMadeError`."""
    extract = _of_room(kind, "extract", ROOMS[kind].extract)
    text = _of_room(kind, "text", "text")

    def told(order: Order) -> str:
        return str(text(extract(order.library, order.pathway)))

    return told


def _of_room(kind: Kind, place: str, name: str) -> Any:
    package = ROOMS[kind].package
    module = f"{package}.{place}"
    try:
        return getattr(import_module(module), name)
    except ModuleNotFoundError as error:
        if error.name not in (package, module):
            raise
        raise NotMadeError(
            _("This version makes no {kind} in that form yet.").format(kind=kind.words)
        ) from error
