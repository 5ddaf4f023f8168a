"""The script in columns: two across a landscape page, one down a portrait page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.flow.block import Area, Laid, plain
from chamberwise.exports.flow.far import far
from chamberwise.exports.flow.filling import fill, fits
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import (
    Align,
    Arrow,
    Item,
    Outline,
    Page,
    Role,
    Shape,
    Style,
    Text,
)
from chamberwise.exports.script.blocks import BODY, head, step_groups
from chamberwise.exports.script.content import CALL_OUTS, Script
from chamberwise.exports.typesetting.measuring import Setting

GUTTER = 8.0
STRIP = 11.0
TICK = 8.0
STEP = 11.0
MOST_PAGES = 200
CALL = N_("Call out each minute; tick it:")


def script_pages(frame: Frame, script: Script) -> list[Page]:
    """Return the pages. Raises `UnfitError` where a word is wider than a column."""
    columns = _columns(frame)
    width, height = columns[0].width, columns[0].height
    laid = lay(frame.ruler, [head(script)], width, height)
    for step in script.steps:
        laid += _whole(lay(frame.ruler, step_groups(step), width, height), height)
    filled = fill(laid, columns * MOST_PAGES)
    count = -(-len(filled) // len(columns))
    pages = []
    for place in range(count):
        own = filled[len(columns) * place : len(columns) * (place + 1)]
        items = (*_strip(frame), *_gutters(columns), *(item for each in own for item in each))
        pages.append(frame.page(items, place + 1, count, far(items)))
    return pages


def _whole(laid: list[Laid], height: float) -> list[Laid]:
    """Return a step that no page end parts, unless it is higher than a page."""
    if not fits(laid, height):
        return laid
    return [*(replace(each, keeps_next=True) for each in laid[:-1]), *laid[-1:]]


def _columns(frame: Frame) -> list[Area]:
    body = frame.body
    count = 2 if frame.format.width > frame.format.height else 1
    width = (body.width - GUTTER * (count - 1)) / count
    top, high = body.y + STRIP, body.height - STRIP
    return [Area(body.x + place * (width + GUTTER), top, width, high) for place in range(count)]


def _gutters(columns: list[Area]) -> Iterator[Item]:
    for each in columns[1:]:
        x = each.x - GUTTER / 2
        yield Arrow(((x, each.y), (x, each.y + each.height)), 0.25, Ink.RULE, has_head=False)


def _strip(frame: Frame) -> Iterator[Item]:
    """Yield the minutes to tick, across the head of each page."""
    body = frame.body
    room = frame.ruler(Setting(plain(_(CALL)), BODY, body.width))
    y = body.y + (TICK - room.height) / 2
    yield Text(body.x, y, room.width + 1, room.height, plain(_(CALL)), BODY, Role.NOTE)
    style = Style(BODY.size, align=Align.CENTRE)
    x = body.x + room.width + 6
    for minute in range(1, CALL_OUTS + 1):
        if x + TICK > body.right:
            return
        yield Shape(Outline.PANEL, x, body.y, TICK, TICK)
        said = plain(str(minute))
        yield Text(x, y, TICK, room.height, said, style, Role.NOTE)
        x += STEP
