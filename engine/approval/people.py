"""Whether two names are of one person, whatever the case, signs and office they came with."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

_TITLED = re.compile(r"(?:dr|mr|mrs|ms|miss|mx|prof|professor|sister|nurse)\b")
_SIGNS = re.compile(r"[^\w]+|_")


def is_one_of(name: str, others: Iterable[str]) -> bool:
    """Whether a name stands among others. An office after a comma makes nobody somebody else.

    >>> is_one_of("dr  A. Example", ["Dr A. Example, educator", "Dr B. Example"])
    True
    >>> is_one_of("Theatre-educator", ["Theatre educator"])
    True
    >>> is_one_of("Consultant, unit A", ["Consultant, unit B"])
    False
    """
    return any(_are_one(name, other) for other in others)


def _are_one(name: str, other: str) -> bool:
    if _bare(name) == _bare(other):
        return True
    head, first = (_bare(each.partition(",")[0]) for each in (name, other))
    is_person = "," not in name or "," not in other or _TITLED.match(head) is not None
    return head == first and is_person


def _bare(name: str) -> str:
    plain = unicodedata.normalize("NFKC", name).casefold()
    return " ".join(_SIGNS.sub(" ", plain).split())
