"""The stocked powers around an exact one, and the refraction each leaves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import ROUND_FLOOR, Decimal

from chamberwise.engine.working.digits import plain, shown
from chamberwise.engine.working.sheet import Sheet

STEP = Decimal("0.5")
"""Dioptres between lenses where no stock was given."""
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
    for which, lens in zip(("below", "above"), around(exact, stock), strict=True):
        if lens is None:
            rows.append((f"none {which} on the shelf", "-", "-"))
            continue
        sheet.head(f"What a lens of {plain(lens)} D leaves, the step {which}")
        sheet.take("P", lens)
        left = refraction(sheet)
        sheet.conclude(f"{which}-leaves", f"{plain(lens)} D leaves", left, "D", 2, sign=True)
        rows.append(
            (f"{plain(lens)} D, {which}", f"{shown(left, 2, sign=True)} D", _from(left, aim))
        )
    sheet.take("Rx", aim)
    sheet.tabulate("Stocked powers around the exact one", ("lens", "leaves", "against aim"), rows)
    sheet.remark("Which of the two steps is chosen is the team's own policy; none is chosen here.")


def _from(left: Decimal, aim: Decimal) -> str:
    return f"{shown(left - aim, 2, sign=True)} D"
