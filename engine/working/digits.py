"""Decimal numbers: rounded as by hand, written without a trailing zero or an exponent."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

_STEPS = tuple(Decimal(1).scaleb(-places) for places in range(9))


def rounded(value: Decimal, places: int) -> Decimal:
    """Return a number to some places, a half going away from zero.

    >>> rounded(Decimal("0.125"), 2), rounded(Decimal("-0.125"), 2)
    (Decimal('0.13'), Decimal('-0.13'))
    """
    return value.quantize(_STEPS[places], rounding=ROUND_HALF_UP)


def plain(value: Decimal) -> str:
    """Return a number as it is read aloud: no exponent, no trailing zero, no negative nought.

    >>> plain(Decimal("19.10")), plain(Decimal("1E+2")), plain(Decimal("-0.00"))
    ('19.1', '100', '0')
    """
    text = f"{value:f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def signed(value: Decimal) -> str:
    """Return a number with its sign, as refractions are written.

    >>> signed(Decimal("0.50")), signed(Decimal("-1")), signed(Decimal(0))
    ('+0.5', '-1', '0')
    """
    return f"+{plain(value)}" if value > 0 else plain(value)


def shown(value: Decimal, places: int, *, sign: bool = False) -> str:
    """Return a number to some places at most."""
    told = rounded(value, places)
    return signed(told) if sign else plain(told)
