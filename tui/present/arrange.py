"""What of a step goes where on a screen of a given size: the card in view, the body under it.

The card stays in view and the body scrolls where it must. The headline stands at the top of the
card, under its cautions alone; what was passed on the way is told last. Where room is short, air
goes first, then long cautions move from the card to the top of the body.
"""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.tui.present.parts import GAP, Part, laid_out
from chamberwise.tui.present.step_page import Density, body, head, passed, stacked, warnings
from chamberwise.tui.present.step_view import StepView

SIDE_FROM = 100
SIDE_WIDTH = 34
WIDEST = 92
"""Lines longer than this are hard to find the next of."""


@dataclass(frozen=True, slots=True)
class Arrangement:
    """The card and the body, and whether the body fits without scrolling."""

    card: list[Part]
    body: list[Part]
    fits: bool = True


def arrange(view: StepView, width: int, rows: int) -> Arrangement:
    """Return the airiest arrangement that fits, else the densest one with a short card."""
    way, guard, top = passed(view), warnings(view), head(view)
    for density in Density:
        under = stacked([body(view, density), way])
        if _fit(found := Arrangement([GAP, *stacked([guard, top]), GAP], under), width, rows):
            return found
    if _fit(found := Arrangement([*guard, *top, GAP], under), width, rows):
        return found
    card = [*stacked([guard, top]), GAP]
    if _height(card, width) <= rows * 3 // 5:
        return Arrangement(card, under, fits=False)
    return Arrangement([*top, GAP], stacked([guard, under]), fits=False)


def _fit(found: Arrangement, width: int, rows: int) -> bool:
    return _height(found.card, width) + _height(found.body, width) <= rows


def _height(parts: list[Part], width: int) -> int:
    return len(laid_out(parts, width))


def two_ends(left: str, right: str, width: int) -> str:
    """Return one line with text at both ends; the left one is cut where both do not fit.

    >>> two_ends("Leaking wound", "step 01:05", 20)
    'Leaking… step 01:05'
    """
    room = width - len(right) - 1
    if len(left) > room:
        left = left[: max(0, room - 1)].rstrip() + "…"
        return f"{left} {right}"
    return f"{left}{' ' * (room - len(left))} {right}".rstrip()
