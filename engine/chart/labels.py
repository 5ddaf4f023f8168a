"""Several labels in one sentence: only the first keeps its capital."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby

from chamberwise.engine.language.capitals import small
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

OR, AND = N_(" OR "), N_(" AND ")


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
    between, with_parts = _(OR), _(AND)
    told = lowered(between.join([first, *map(small, rest)]) for first, *rest in _alike(labels))
    is_mixed = len(told) > 1 and any(with_parts in each or ": " in each for each in told)
    return ("\n" + between.lstrip() if is_mixed else between).join(told)


def _alike(labels: Iterable[str]) -> Iterator[list[str]]:
    """Yield labels that begin alike together; of all but the first, only what follows."""
    for _head, alike in groupby(labels, key=lambda label: label.rpartition(": ")[0]):
        first, *rest = alike
        yield [first, *(each.rpartition(": ")[2] for each in rest)]
