"""What stands above and below the rows of one of several sheets."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Body
from chamberwise.exports.paper.sheet import Role, Weight
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Wall
from chamberwise.exports.wall.front import head
from chamberwise.exports.wall.panels import calls_and_notes, key
from chamberwise.exports.wall.pen import HEAD, SMALL, Pen, Words

NAMED = N_("{title}, sheet {number} of {count}")
ONWARD = N_("Continued on sheet {next}")


def edges(content: Wall, body: Body, pen: Pen, number: int, count: int) -> tuple[Piece, Piece]:
    """Return what stands above and below the rows of a sheet."""
    below = key(pen, content, body.width)
    if number > 1:
        above = named(content, body, pen, number, count)
        return spaced(above, under=pen.em(0.9)), spaced(below, over=pen.em(0.6))
    onward = going_on(body, pen, number)
    panels = calls_and_notes(pen, content, body.width)
    at = onward.height + pen.em(0.6), onward.height + panels.height + pen.em(1.2)
    items = (onward.at(0, 0), *panels.at(0, at[0]), *below.at(0, at[1]))
    foot = Piece(items, body.width, at[1] + below.height)
    above = spaced(head(pen, content, body.width), under=pen.em(0.9))
    return above, spaced(foot, over=pen.em(0.6))


def going_on(body: Body, pen: Pen, number: int) -> Words:
    """Return where the chart goes on after a sheet."""
    said = _(ONWARD).format(next=number + 1)
    return pen.words(said, body.width, SMALL, weight=Weight.BOLD, role=Role.NOTE)


def spaced(piece: Piece, over: float = 0.0, under: float = 0.0) -> Piece:
    """Return something with room over and under it, in millimetres."""
    return Piece(tuple(piece.at(0, over)), piece.width, over + piece.height + under)


def named(content: Wall, body: Body, pen: Pen, number: int, count: int) -> Piece:
    """Return the name of a sheet, and at the right, or below it, where the chart goes on."""
    said = _(NAMED).format(title=content.title, number=number, count=count)
    words = pen.words(said, body.width, HEAD, weight=Weight.BOLD, role=Role.HEADING)
    if number >= count:
        return Piece((words.at(0, 0),), body.width, words.height)
    onward = going_on(body, pen, number)
    if words.width + pen.em(2.0) + onward.width <= body.width:
        at = body.width - onward.width, words.height - onward.height
        return Piece((words.at(0, 0), onward.at(*at)), body.width, words.height)
    height = words.height + onward.height
    return Piece((words.at(0, 0), onward.at(0, words.height)), body.width, height)
