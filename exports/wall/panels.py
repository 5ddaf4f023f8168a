"""The panels below the main line: whom to call, dangers, and what the symbols mean."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.exports.control.content import NOT_SET
from chamberwise.exports.language.values import told
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Align,
    Arrow,
    Item,
    Outline,
    Role,
    Run,
    Shape,
    Tier,
    Weight,
)
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Note, Place, Wall
from chamberwise.exports.wall.front import in_rows
from chamberwise.exports.wall.pen import HEAD, PLAIN, SMALL, Pen
from chamberwise.exports.wall.stops import circle

CALLS = 0.36
NARROW = 44.0
"""Body sizes: in less than this the panels stand below each other."""


def panels(pen: Pen, content: Wall, width: float) -> Piece:
    """Return the panels with the key below."""
    above, below = calls_and_notes(pen, content, width), key(pen, content, width)
    top = above.height + pen.em(0.8)
    return Piece((*above.items, *below.at(0, top)), width, top + below.height)


def calls_and_notes(pen: Pen, content: Wall, width: float) -> Piece:
    """Return whom to call and the dangers, and below where things lie that are needed at once."""
    above = _calls_and_notes(pen, content, width)
    below = lying(pen, content.lying(frozenset({0})), width)
    if not below.items:
        return above
    top = above.height + pen.em(0.8)
    return Piece((*above.items, *below.at(0, top)), width, top + below.height)


def lying(pen: Pen, places: tuple[Place, ...], width: float) -> Piece:
    """Return where things lie, the nearest first to be needed; nothing where nothing is set."""
    if not places:
        return Piece((), width, 0.0)
    pad = pen.em(0.7)
    items: list[Item] = []
    y = _heading(pen, _("Where it lies"), width, items, pad)
    columns, between = (2 if width >= pen.em(NARROW) else 1), pen.em(1.5)
    each = (width - 2 * pad - (columns - 1) * between) / columns
    told = [_lies(pen, place, each) for place in places]
    rows, height = in_rows(told, columns, each + between, pen.em(0.2))
    items += (moved(item, pad, y) for item in rows)
    return _boxed(pen, Piece(tuple(items), width, y + height + pad * 0.6))


def _lies(pen: Pen, place: Place, width: float) -> Piece:
    runs = (Run(f"{place.item}: ", Weight.BOLD), Run(f"{place.told}."))
    words = pen.words(runs, width, SMALL, role=Role.NOTE)
    return Piece((words.at(0, 0),), width, words.height)


def _calls_and_notes(pen: Pen, content: Wall, width: float) -> Piece:
    """Return the two side by side where there is room."""
    gap = pen.em(0.8)
    if width < pen.em(NARROW):
        first, notes = calls(pen, content, width), dangers(pen, content, width)
        second = (0.0, first.height + gap)
        height = second[1] + notes.height
    else:
        first = calls(pen, content, (width - gap) * CALLS)
        notes = dangers(pen, content, (width - gap) * (1 - CALLS))
        second = (first.width + gap, 0.0)
        height = max(first.height, notes.height)
    return Piece((*first.items, *notes.at(*second)), width, height)


def _boxed(pen: Pen, piece: Piece) -> Piece:
    box = Shape(Outline.PANEL, 0, 0, piece.width, piece.height, weight=pen.line())
    return Piece((box, *piece.items), piece.width, piece.height)


def calls(pen: Pen, content: Wall, width: float) -> Piece:
    """Return whom to call, with room for the number."""
    pad = pen.em(0.7)
    items: list[Item] = []
    y = _heading(pen, _("Who to call"), width, items, pad)
    for call, number in content.phones or ((_("Nobody is named"), ""),):
        words = pen.words(call, width - 2 * pad, PLAIN, weight=Weight.BOLD)
        phone_said = number or _("Phone, {unset}:").format(unset=_(NOT_SET))
        phone = pen.words(phone_said, width - 2 * pad, SMALL, role=Role.NOTE)
        top = y + words.height + pen.em(0.2)
        below = top + phone.height
        start = pad + phone.room.width + pen.em(0.5)
        items += [words.at(pad, y), phone.at(pad, top)]
        if not number:
            if start > width - pad - pen.em(3):
                start, below = pad, below + pen.em(1.5)
            ends = ((start, below), (width - pad, below))
            items.append(Arrow(ends, pen.line(0.6), has_head=False))
        y = below + pen.em(0.5)
    return _boxed(pen, Piece(tuple(items), width, y + pad * 0.5))


def dangers(pen: Pen, content: Wall, width: float) -> Piece:
    """Return the dangers of the chart, each with what to do instead."""
    pad = pen.em(0.7)
    items: list[Item] = []
    y = _heading(pen, _("Safety notes"), width, items, pad)
    for note in content.notes:
        piece = _note(pen, note, width - 2 * pad)
        items += piece.at(pad, y)
        y += piece.height + pen.em(0.45)
    said = _more(content)
    if said:
        words = pen.words(said, width - 2 * pad, SMALL, ink=Ink.GREY, role=Role.NOTE)
        items.append(words.at(pad, y))
        y += words.height + pen.em(0.3)
    return _boxed(pen, Piece(tuple(items), width, y + pad * 0.4))


def _more(content: Wall) -> str:
    """Return how many dangers the chart leaves to the full pathway."""
    more = content.more_notes
    if not more:
        return "" if content.notes else _("The pathway names no danger.")
    if content.notes:
        return _("The full pathway names {number} more.").format(number=more)
    return ngettext(
        "The full pathway names {number} danger.", "The full pathway names {number} dangers.", more
    ).format(number=more)


def _heading(pen: Pen, text: str, width: float, items: list[Item], pad: float) -> float:
    words = pen.words(text, width - 2 * pad, HEAD, weight=Weight.BOLD, role=Role.HEADING)
    items.append(words.at(pad, pad * 0.6))
    return words.height + pad * 0.6 + pen.em(0.3)


def _note(pen: Pen, note: Note, width: float) -> Piece:
    signal = told(note.signal).upper()
    room = pen.words(signal, pen.em(12), SMALL, weight=Weight.BOLD).room.width + pen.em(0.9)
    word = pen.words(
        signal, room, SMALL, weight=Weight.BOLD, ink=Ink.WHITE, align=Align.CENTRE,
        role=Role.CAUTION,
    )  # fmt: skip
    badge = Shape(Outline.PANEL, 0, 0, room, word.height + pen.em(0.2), Ink.DANGER, Ink.DANGER, 0)
    x = room + pen.em(0.7)
    runs = (Run(note.harm + " "), Run(note.instead, Weight.BOLD))
    words = pen.words(runs, width - x, SMALL, role=Role.CAUTION)
    items = (badge, word.at(0, pen.em(0.1)), words.at(x, pen.em(0.1)))
    return Piece(items, width, max(badge.height, words.height + pen.em(0.1)))


def key(pen: Pen, content: Wall, width: float) -> Piece:
    """Return what the symbols mean that are used."""
    used = _used(content)
    entries = [each for each in _signs(pen) if each[2] in used]
    items: list[Item] = []
    x, y, high = 0.0, 0.0, pen.em(2.4)
    for symbol, text, _sign in entries:
        start = symbol.width + pen.em(0.5)
        most = min(pen.em(20), width - start)
        words = pen.words(text, most, SMALL, ink=Ink.GREY, role=Role.NOTE, tier=Tier.REFER)
        if x and x + start + words.width > width:
            x, y, high = 0.0, y + high, pen.em(2.4)
        high = max(high, words.height)
        items += symbol.at(x, y + (high - symbol.height) / 2)
        items.append(words.at(x + start, y + (high - words.height) / 2))
        x += start + words.width + pen.em(1.4)
    return Piece(tuple(items), width, y + high)


def _signs(pen: Pen) -> list[tuple[Piece, str, str]]:
    """Return every sign of the key with its words, and what has to be on the chart for it."""
    return [
        (_little(Outline.DECISION, pen), _("decision"), "decision"),
        (_little(Outline.PROCESS, pen), _("action"), "action"),
        (_little(Outline.PREDEFINED_PROCESS, pen), _("another chart"), "another chart"),
        (_little(Outline.TERMINATOR, pen), _("end"), "end"),
        (circle(pen, 7, is_row=True, of="key"), _("go to row 7 here"), "row"),
        (circle(pen, 17, is_row=False, of="key"), _("step 17 of the full pathway"), "full"),
        (_dashes(pen), _("steps left out here"), "left out"),
    ]


def _used(content: Wall) -> frozenset[str]:
    sides = [side for one in content.rows for side in one.sides]
    downs = [one.down for one in content.rows if one.down]
    downs += [content.opening] if content.opening else []
    found = {one.sign.value for one in content.rows}
    found |= {side.stop.sign.value for side in sides if side.stop.sign}
    found |= {"action" for side in sides if side.done}
    found |= {"row" for side in sides if side.stop.row}
    found |= {"full" for side in sides if side.stop.full}
    found |= {each for down in downs if down.via for each in ("full", "left out")}
    return frozenset(found)


def _little(outline: Outline, pen: Pen) -> Piece:
    height = pen.em(1.5)
    width = height if outline is Outline.DECISION else max(pen.em(2.4), 6.5)
    return Piece((Shape(outline, 0, 0, width, height, weight=pen.line()),), width, height)


def _dashes(pen: Pen) -> Piece:
    width = pen.em(3.2)
    return Piece((Arrow(((0, 0), (width, 0)), pen.line(1.75), is_dashed=True),), width, 0.1)
