"""Amount, volume and strength: three figures of one dose, which have to agree."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.refusal import refused

TOLERANCE = Decimal("0.005")
"""The share by which a written amount may differ: that of two rounded figures."""


def agree(amount: Decimal, volume: Decimal, strength: Decimal) -> bool:
    """Whether mg, mL and mg/mL tell one dose.

    >>> agree(Decimal("1"), Decimal("0.1"), Decimal("10"))
    True
    >>> agree(Decimal("1"), Decimal("0.1"), Decimal("1"))
    False
    """
    worked = volume * strength
    return abs(amount - worked) <= TOLERANCE * max(amount, worked)


def hold_together(amount: Decimal, volume: Decimal, strength: Decimal) -> None:
    """Refuse three figures that disagree. Raises `RefusedError`."""
    if agree(amount, volume, strength):
        return
    worked = volume * strength
    times = max(amount, worked) / min(amount, worked) if min(amount, worked) > 0 else Decimal(0)
    slip = _(" They differ about tenfold: look at the decimal point.") if 9 < times < 11 else ""
    raise refused(
        "amount",
        _(
            "{amount} mg, {volume} mL and {strength} mg/mL disagree: {volume} × {strength} "
            "= {worked} mg"
        ).format(
            amount=plain(amount),
            volume=plain(volume),
            strength=plain(strength),
            worked=plain(worked),
        ),
        _("One of the three is of another dose.{slip}").format(slip=slip),
        _("Find which, on the label and with a second person."),
    )
