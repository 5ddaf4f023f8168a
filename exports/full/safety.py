"""The safety notes: every danger once, in columns of even height below one signal word each."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.cautions import LOOK, signal_word
from chamberwise.exports.full.content import Danger, FullPathway
from chamberwise.exports.full.flow import LANE
from chamberwise.exports.full.piece import Piece, Setter
from chamberwise.exports.full.words import at_steps
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Arrow, Item, Outline, Role, Run, Shape, Weight

SAFETY = N_("Safety notes: every danger of this pathway")
BAR = 6.0
PAD = 2.0
GAP = 2.2
TRIES = 24


def danger_runs(danger: Danger) -> tuple[Run, ...]:
    """Return a danger with the steps that tell it again."""
    return (
        Run(f"{danger.harm}\n"),
        Run(_("Instead: "), Weight.BOLD),
        Run(danger.instead, Weight.MEDIUM),
        Run(f" {at_steps(danger.steps)}"),
    )


def safety_title(setter: Setter, width: float) -> Piece:
    """Return the heading."""
    return setter.text(_(SAFETY), setter.style(15, Weight.BOLD), width, Role.HEADING)


def safety_notes(setter: Setter, content: FullPathway, width: float) -> list[Piece]:
    """Return every danger as words in the width of a column."""
    inside = width - 2 * setter.mm(PAD)
    return [
        setter.text(danger_runs(each), setter.body, inside, Role.CAUTION)
        for each in content.dangers
    ]


def safety_panels(
    setter: Setter, notes: Sequence[Piece], width: float, columns: int, height: float
) -> tuple[Piece, int]:
    """Return as many notes as a height has room for, in even columns, and how many they are."""
    room = height - setter.mm(BAR + 2 * PAD)
    gap = setter.mm(GAP)
    dealt = _dealt(notes, columns, gap, room)
    count = sum(len(each) for each in dealt)
    shortest = sum(each.height + gap for each in notes[:count]) / columns
    for step in range(TRIES):
        tried = _dealt(notes[:count], columns, gap, shortest + (room - shortest) * step / TRIES)
        if sum(len(each) for each in tried) == count:
            dealt = tried
            break
    panels = [_panel(setter, each, width) for each in dealt if each]
    items: list[Item] = []
    for place, panel in enumerate(panels):
        items += panel.at(place * (width + setter.mm(LANE)), 0.0)
    worst = max(panels, key=lambda each: each.over, default=Piece(0.0, ()))
    return Piece(
        max((each.height for each in panels), default=0.0), tuple(items), worst.over, worst.word
    ), count


def _dealt(
    notes: Sequence[Piece], columns: int, gap: float, height: float
) -> list[Sequence[Piece]]:
    """Fill columns of a height one after the other."""
    found, at = [], 0
    for _column in range(columns):
        begin, used = at, 0.0
        while at < len(notes) and used + notes[at].height <= height:
            used += notes[at].height + gap
            at += 1
        found.append(notes[begin:at])
    return found


def _panel(setter: Setter, notes: Sequence[Piece], width: float) -> Piece:
    border, ground, letters, _weight = LOOK["danger"]
    pad, bar, gap = setter.mm(PAD), setter.mm(BAR), setter.mm(GAP)
    head = Shape(Outline.PANEL, 0.0, 0.0, width, bar, border, ground, setter.mm(0.6))
    style = setter.style(10, Weight.BOLD, letters)
    items: list[Item] = [*setter.centred(signal_word("danger"), style, head, Role.CAUTION)]
    y = bar + pad
    for place, note in enumerate(notes):
        if place:
            level = y - gap / 2
            line = ((pad, level), (width - pad, level))
            items.append(Arrow(line, setter.mm(0.25), Ink.RULE, has_head=False))
        items += note.at(pad, y)
        y += note.height + gap
    height = y - gap + pad
    frame = Shape(Outline.PANEL, 0.0, 0.0, width, height, border, Ink.WHITE, setter.mm(0.6))
    worst = max(notes, key=lambda each: each.over)
    return Piece(height, (frame, *items), worst.over, worst.word)
