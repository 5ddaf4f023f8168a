"""A caution as a panel: the signal word on its ground, the harm, and what to do instead."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.exports.full.piece import Piece, Setter, stacked
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Item, Outline, Role, Run, Shape, Style, Text, Weight

_LOOK = {
    "danger": (Ink.DANGER, Ink.DANGER, Ink.WHITE, 0.7),
    "warning": (Ink.BLACK, Ink.CAUTION, Ink.BLACK, 0.7),
    "caution": (Ink.BLACK, Ink.CAUTION, Ink.BLACK, 0.3),
    "notice": (Ink.BLACK, Ink.WHITE, Ink.BLACK, 0.3),
}
"""Border, ground and letters of the signal word, and the weight of the border."""
ALERT = "⚠\u00a0"
"""Stands before every signal word that speaks of harm to a person."""


def caution(
    setter: Setter, signal: str, harm: str, instead: str, after: str, width: float
) -> Piece:
    """Return a caution in a width; `after` is a remark in small type, such as its sources."""
    border, ground, letters, thickness = _LOOK[signal]
    weight = setter.mm(thickness)
    pad, bar = setter.mm(2.0), setter.mm(5.6)
    inside = width - 2 * pad
    style = setter.style(9.6, Weight.BOLD, letters)
    word = ("" if signal == "notice" else ALERT) + signal.upper()
    tail = f" {after}" if after else ""
    pieces = [
        setter.text(harm, setter.body, inside, Role.CAUTION),
        setter.text(
            (Run("Instead: ", Weight.BOLD), Run(instead, Weight.MEDIUM), Run(tail)),
            setter.body,
            inside,
            Role.CAUTION,
        ),
    ]
    words = stacked(pieces, setter.mm(0.8))
    height = bar + words.height + 2.6 * pad / 2
    items = (
        Shape(Outline.PANEL, 0.0, 0.0, width, height, border, Ink.WHITE, weight),
        Shape(Outline.PANEL, 0.0, 0.0, width, bar, border, ground, weight),
        *_word(setter, word, style, bar, pad),
        *words.at(pad, bar + pad / 2),
    )
    return Piece(height, items, words.over, words.word)


def _word(setter: Setter, word: str, style: Style, bar: float, pad: float) -> tuple[Item, ...]:
    shape = Shape(Outline.PANEL, 0.0, 0.0, 0.0, bar)
    _, text = setter.centred(word, style, shape, Role.CAUTION)
    assert isinstance(text, Text)
    return (replace(text, x=pad),)
