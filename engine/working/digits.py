"""Decimal numbers: rounded as by hand, written without a trailing zero or an exponent."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from chamberwise.engine.language.numbers import decimal

_STEPS = tuple(Decimal(1).scaleb(-places) for places in range(9))


def rounded(value: Decimal, places: int) -> Decimal:
    """Return a number to some places, a half going away from zero.

    >>> rounded(Decimal("0.125"), 2), rounded(Decimal("-0.125"), 2)
    (Decimal('0.13'), Decimal('-0.13'))
    """
    return value.quantize(_STEPS[places], rounding=ROUND_HALF_UP)


def plain(value: Decimal) -> str:
    """Return a number as it is told, in the language spoken: what `pointed` says.

    >>> plain(Decimal("0.25"))
    '0.25'
    """
    return decimal(pointed(value))


def pointed(value: Decimal) -> str:
    """Return a number with a point: no exponent, no trailing zero, no negative nought.

    >>> pointed(Decimal("19.10")), pointed(Decimal("1E+2")), pointed(Decimal("-0.00"))
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


def as_typed(value: Decimal) -> str:
    """Return a number as it can be given to a calculation in every language.

    Three decimals could be taken for thousands, so they are followed by a nought.

    >>> as_typed(Decimal("118.425")), as_typed(Decimal("21.50")), as_typed(Decimal(21))
    ('118.4250', '21.5', '21')
    """
    text = pointed(value)
    return f"{text}0" if len(text.partition(".")[2]) == 3 else text
