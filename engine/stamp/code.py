"""The stamp itself: 40 bits of a digest in Crockford's base 32, closed by his check sign.

`7QK2-M4XP-3` is eight signs and the number modulo 37. Five of the 37 check signs are awkward to
read aloud or to type at a shell (`*~$=U`); a code that would end in one is drawn again.
"""

from __future__ import annotations

from hashlib import sha256
from itertools import count

from chamberwise.engine.keys.base32 import BITS, SIGNS, as_meant, grouped
from chamberwise.engine.language.texts import gettext as _

LENGTH = 8
CHECK_SIGNS = SIGNS + "*~$=U"
MODULUS = len(CHECK_SIGNS)


class MistypedError(ValueError):
    """What was typed is no stamp; `args[0]` says what is wrong with it, as sentences."""


def stamp_of(content: str, sheet: str, local: str = "") -> str:
    """Return the stamp of a content digest, a kind of sheet and the digest of a local sheet."""
    for turn in count():
        told = "\n".join((content, sheet, local, str(turn)))
        number = int.from_bytes(sha256(told.encode()).digest()[: LENGTH * BITS // 8])
        if number % MODULUS < len(SIGNS):
            return stamp_of_number(number)
    raise AssertionError


def stamp_of_number(number: int) -> str:
    """Return a number of 40 bits as a stamp.

    >>> stamp_of_number(1234)
    '0000-016J-D'
    """
    places = range(BITS * (LENGTH - 1), -1, -BITS)
    signs = "".join(SIGNS[number >> place & len(SIGNS) - 1] for place in places)
    return grouped(signs + CHECK_SIGNS[number % MODULUS])


def read_stamp(typed: str) -> str:
    """Return a stamp as it is printed, whatever the care it was typed with.

    Small letters, O for 0, I and L for 1, spaces and hyphens are forgiven. Raises `MistypedError`.
    """
    signs = as_meant(typed)
    if len(signs) != LENGTH + 1:
        raise MistypedError(
            _(
                "A stamp has {length} letters and figures, such as {example}; "
                "this has {count}. Type it as it stands beside the square code."
            ).format(length=LENGTH + 1, example=stamp_of_number(1234), count=len(signs))
        )
    odd = [sign for sign in signs[:-1] if sign not in SIGNS]
    if odd:
        raise MistypedError(
            _("`{sign}` never stands in a stamp. Look at that letter again.").format(sign=odd[0])
        )
    number = 0
    for sign in signs[:-1]:
        number = number << BITS | SIGNS.index(sign)
    if signs[-1] != CHECK_SIGNS[number % MODULUS]:
        raise MistypedError(
            _(
                "The last sign does not fit the others: probably a typing error. Compare it "
                "with the sheet, letter by letter."
            )
        )
    return grouped(signs)
