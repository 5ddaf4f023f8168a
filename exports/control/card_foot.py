"""The foot of a card that is cut out of its page: what must still be said of it then."""

from __future__ import annotations

from typing import NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW, UNREVIEWED, Control, day
from chamberwise.exports.control.lines import exceptions
from chamberwise.exports.flow.holding import unparted
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Arrow, Item, Role, Run, Style, Text, Tier, Weight
from chamberwise.exports.typesetting.measuring import Ruler, Setting

STYLE = Style(9.2, ink=Ink.GREY, pitch=1.25)
GAP = 1.2


class CardFoot(NamedTuple):
    """The foot's items, and the room in millimetres that it takes from the bottom."""

    items: tuple[Item, ...]
    height: float


def card_foot(
    ruler: Ruler, control: Control, x: float, bottom: float, width: float, far: str = ""
) -> CardFoot:
    """Return the foot that ends at `bottom`: marks, rule of use, edition, stamp, review date."""
    runs = _runs(control, far)
    high = ruler(Setting(runs, STYLE, width)).height
    top = bottom - high
    line = Arrow(((x, top - GAP), (x + width, top - GAP)), 0.25, Ink.BLACK, has_head=False)
    text = Text(x, top, width, high, runs, STYLE, Role.FOOTER, Tier.REFER)
    return CardFoot((line, text), high + 2 * GAP)


def _short(mark: str) -> str:
    """Return a mark without its second half, and not in more capitals than are read at ease."""
    if mark == _(UNREVIEWED):
        return _("Translation not reviewed.")
    return f"{mark.partition(':')[0]}."


def _runs(control: Control, far: str) -> tuple[Run, ...]:
    """Return all that is said, each on one line or another as it fits."""
    marks = " ".join(unparted(_short(mark)) for mark in control.marks)
    due = _("Review by {review_by}").format(review_by=day(control.review_by))
    said = (
        _(" Edition\u00a0{edition}.").format(edition=control.edition),
        _("Stamp\u00a0{code}.").format(code=control.code),
        f"{unparted(due)}.",
        far,
    )
    head = (Run(f"{marks} ", Weight.BOLD),) if marks else ()
    off = exceptions(control)
    told = Run(" ".join(each for each in said if each))
    return (*head, Run(unparted(_(FOLLOW)), Weight.BOLD), told, *((Run(" "), *off) if off else ()))
