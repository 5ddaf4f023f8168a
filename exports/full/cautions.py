"""A caution as a compact block: the signal word at the left, harm and what to do instead beside."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.content import Caution
from chamberwise.exports.full.piece import Piece, Setter
from chamberwise.exports.full.words import marks
from chamberwise.exports.language.values import told as told_value
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Item, Outline, Role, Run, Shape, Weight

LOOK = {
    "danger": (Ink.DANGER, Ink.DANGER, Ink.WHITE, 0.6),
    "warning": (Ink.BLACK, Ink.CAUTION, Ink.BLACK, 0.6),
    "caution": (Ink.BLACK, Ink.CAUTION, Ink.BLACK, 0.3),
    "notice": (Ink.BLACK, Ink.WHITE, Ink.BLACK, 0.3),
}
"""Border, ground and letters of the signal word, and the weight of the border."""
SIGN = "⚠"
"""Stands with every signal word that speaks of harm to a person."""
BADGE = 19.5
PAD = 1.5


def signal_word(signal: str) -> str:
    """Return the signal word as it is printed, with its sign.

    >>> signal_word("notice")
    'NOTICE'
    """
    word = told_value(signal).upper()
    return word if signal == "notice" else f"{SIGN} {word}"


def caution_runs(told: Caution, elsewhere: int = 0) -> tuple[Run, ...]:
    """Return harm and instead; where `elsewhere` has told the harm, only what to do instead."""
    instead = (Run(_("Instead: "), Weight.BOLD), Run(told.instead, Weight.MEDIUM))
    if elsewhere:
        return (*instead, Run(_(" Harm: see step\u00a0{elsewhere}.").format(elsewhere=elsewhere)))
    return (Run(f"{told.harm}\n"), *instead, Run(marks(told.sources)))


def caution(setter: Setter, told: Caution, width: float, elsewhere: int = 0) -> Piece:
    """Return a caution in a width; `elsewhere` is a step on the same page that tells it in full."""
    border, ground, _letters, thickness = LOOK[told.signal]
    weight, pad, badge = setter.mm(thickness), setter.mm(PAD), setter.mm(BADGE)
    runs = caution_runs(told, elsewhere)
    words = setter.text(runs, setter.body, width - badge - 2 * pad, Role.CAUTION)
    mark = _badge(setter, told.signal)
    height = max(words.height, mark.height) + 1.6 * pad
    items = (
        Shape(Outline.PANEL, 0.0, 0.0, width, height, border, Ink.WHITE, weight),
        Shape(Outline.PANEL, 0.0, 0.0, badge, height, border, ground, weight),
        *mark.at(0.0, (height - mark.height) / 2),
        *words.at(badge + pad, (height - words.height) / 2),
    )
    return Piece(height, items, words.over, words.word)


def _badge(setter: Setter, signal: str) -> Piece:
    """The sign above the word, both in the middle."""
    style = setter.style(10, Weight.BOLD, LOOK[signal][2])
    line = setter.mm(4.4)
    items: list[Item] = []
    for place, word in enumerate(signal_word(signal).split()):
        room = Shape(Outline.PANEL, 0.0, place * line, setter.mm(BADGE), line)
        items += setter.centred(word, style, room, Role.CAUTION)[1:]
    return Piece(len(items) * line, tuple(items))
