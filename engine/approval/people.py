"""Whether two names are of one person, whatever the case and the space they were typed with."""

from __future__ import annotations

from collections.abc import Iterable


def is_one_of(name: str, others: Iterable[str]) -> bool:
    """Whether a name stands among others.

    >>> is_one_of("dr  A. Example", ["Dr A. Example, educator", "Dr A. Example"])
    True
    """
    return _bare(name) in map(_bare, others)


def _bare(name: str) -> str:
    return " ".join(name.split()).rstrip(".").casefold()
