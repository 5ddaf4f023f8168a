"""Several labels in one sentence: only the first keeps its capital."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby

OR, AND = " OR ", " AND "


def lowered(labels: Iterable[str]) -> list[str]:
    """Return labels to be joined; of none, one that says nothing.

    >>> lowered(("None", "At a wound"))
    ['None', 'at a wound']
    """
    first, *rest = [*labels] or [""]
    return [first, *map(small, rest)]


def either(labels: Iterable[str]) -> str:
    """Return labels as alternatives, told apart by a word in capitals, for labels have commas.

    What labels begin with alike is said once. Where one has parts, each has a line of its own.

    >>> either(("Whole, centred", "Torn"))
    'Whole, centred OR torn'
    >>> either(("Cannot tell: otherwise", "Cannot tell: not known"))
    'Cannot tell: otherwise OR not known'
    """
    told = lowered(OR.join([first, *map(small, rest)]) for first, *rest in _alike(labels))
    is_mixed = len(told) > 1 and any(AND in each or ": " in each for each in told)
    return ("\n" + OR.lstrip() if is_mixed else OR).join(told)


def _alike(labels: Iterable[str]) -> Iterator[list[str]]:
    """Yield labels that begin alike together; of all but the first, only what follows."""
    for _, alike in groupby(labels, key=lambda label: label.rpartition(": ")[0]):
        first, *rest = alike
        yield [first, *(each.rpartition(": ")[2] for each in rest)]


def small(label: str) -> str:
    """Return a label as it stands within a sentence."""
    return label[:1].lower() + label[1:]
