"""Numbers as keys to be typed: Crockford's letters and figures, closed by two check letters.

The check is a Reed and Solomon code (1960) over the 32 signs: of a key up to `SURE_UP_TO` signs
any one or two signs mistyped are noticed, two neighbours swapped among them; of a longer key
surely any one sign.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Crockford's base 32: no I, L, O or U."""

BITS = 5
CHECKS = 2
GROUP = 4
SURE_UP_TO = 30
LONGEST = 1000

_HYPHENS = str.maketrans("", "", "-\u2010\u2011")
_READ_AS = str.maketrans("OIL", "011")
_MODULUS = 0b100101
"""The polynomial x^5 + x^2 + 1 that makes a field of 32 signs."""


def written(number: int, least: int = 1) -> str:
    """Return a number as at least so many signs and the check, in groups with hyphens."""
    signs: list[int] = []
    while number or len(signs) < least:
        signs.append(number % len(SIGNS))
        number >>= BITS
    return grouped("".join(SIGNS[sign] for sign in _checked(signs[::-1])))


def as_meant(typed: str) -> str:
    """Return a key as it was meant: small letters, `o`, `i`, `l`, spaces and hyphens forgiven.

    Also the hyphen at which no line ends, as a sheet has it from which a key is copied.
    """
    return "".join(typed.upper().translate(_READ_AS).translate(_HYPHENS).split())


def grouped(signs: str) -> str:
    """Return signs in groups with hyphens.

    >>> grouped("7QK2M4XP3")
    '7QK2-M4XP-3'
    """
    return "-".join(signs[at : at + GROUP] for at in range(0, len(signs), GROUP))


def number_of(typed: str) -> int | None:
    """Return the number that a key stands for; `None` where it was mistyped.

    It may be typed as `as_meant` forgives.
    """
    plain = as_meant(typed)
    if not CHECKS < len(plain) <= LONGEST or any(sign not in SIGNS for sign in plain):
        return None
    signs = [SIGNS.index(sign) for sign in plain]
    if any(_sums(signs)):
        return None
    number = 0
    for sign in signs[:-CHECKS]:
        number = number << BITS | sign
    return number


def _checked(signs: Sequence[int]) -> list[int]:
    """Return signs with the two that make both sums nothing."""
    plain, weighted = _sums([*signs, 0, 0])
    # With check signs x and y last, x + y = plain and 2x + y = weighted, so 3x is their sum.
    x = _THIRD[plain ^ weighted]
    return [*signs, x, plain ^ x]


def _sums(signs: Iterable[int]) -> tuple[int, int]:
    """Return the values at 1 and at 2; a 1 stands before the signs, so that zeros count."""
    plain = weighted = 1
    for sign in signs:
        plain ^= sign
        weighted = _DOUBLE[weighted] ^ sign
    return plain, weighted


def _times(one: int, other: int) -> int:
    product = 0
    while other:
        product ^= one if other & 1 else 0
        one <<= 1
        one ^= _MODULUS if one & 1 << BITS else 0
        other >>= 1
    return product


def _inverse(sign: int) -> int:
    return next(each for each in range(1, len(SIGNS)) if _times(sign, each) == 1)


_DOUBLE = tuple(_times(sign, 2) for sign in range(len(SIGNS)))
_THIRD = tuple(_times(sign, _inverse(3)) for sign in range(len(SIGNS)))
"""By sign what it is times two, and divided by three, for thousands of keys are written at once."""
