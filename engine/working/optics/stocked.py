"""The stocked powers around an exact one, and the refraction each leaves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import ROUND_FLOOR, Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import plain, shown
from chamberwise.engine.working.sheet import Sheet

STEP = Decimal("0.5")
"""Dioptres between lenses where no stock was given."""


@dataclass(frozen=True, slots=True)
class Side:
    """A stocked power next to the exact one, as it is told; `missing` where the shelf has none."""

    name: str
    missing: str
    head: str
    row: str


SIDES = (
    Side(
        "below",
        N_("none below on the shelf"),
        N_("What a lens of {lens} D leaves, the step below"),
        N_("{lens} D, below"),
    ),
    Side(
        "above",
        N_("none above on the shelf"),
        N_("What a lens of {lens} D leaves, the step above"),
        N_("{lens} D, above"),
    ),
)
TARGET = "Rx0"
"""The symbol that keeps the refraction aimed at."""


def around(power: Decimal, stock: Sequence[Decimal] = ()) -> tuple[Decimal | None, Decimal | None]:
    """Return the stocked powers next below (or equal) and next above; `None` where there is none.

    >>> around(Decimal("19.11"))
    (Decimal('19.0'), Decimal('19.5'))
    """
    if not stock:
        below = (power / STEP).to_integral_value(ROUND_FLOOR) * STEP
        return below, below + STEP
    lower = [each for each in stock if each <= power]
    higher = [each for each in stock if each > power]
    return max(lower, default=None), min(higher, default=None)


def leave(
    sheet: Sheet,
    exact: Decimal,
    stock: Sequence[Decimal],
    refraction: Callable[[Sheet], Decimal],
) -> None:
    """Work what the stocked powers around an exact one leave, and put them side by side."""
    aim = sheet["Rx"]
    rows = []
    for which, lens in zip(SIDES, around(exact, stock), strict=True):
        if lens is None:
            rows.append((_(which.missing), "-", "-"))
            continue
        told = plain(lens)
        sheet.head(_(which.head).format(lens=told))
        sheet.take("P", lens)
        left = refraction(sheet)
        title = _("{lens} D leaves").format(lens=told)
        sheet.conclude(f"{which.name}-leaves", title, left, "D", 2, sign=True)
        rows.append((_(which.row).format(lens=told), _dioptres(left), _dioptres(left - aim)))
    sheet.take("Rx", aim)
    sheet.tabulate(
        _("Stocked powers around the exact one"),
        (N_("lens"), N_("leaves"), N_("against aim")),
        rows,
    )
    sheet.remark(
        _("Which of the two steps is chosen is the team's own policy; none is chosen here.")
    )


def _dioptres(refraction: Decimal) -> str:
    return f"{shown(refraction, 2, sign=True)} D"
