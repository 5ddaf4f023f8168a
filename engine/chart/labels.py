"""Several labels in one sentence: only the first keeps its capital."""

from __future__ import annotations

from collections.abc import Iterable


def lowered(labels: Iterable[str]) -> list[str]:
    """Return labels to be joined; of none, one that says nothing.

    >>> lowered(("None", "At a wound"))
    ['None', 'at a wound']
    """
    first, *rest = [*labels] or [""]
    return [first, *map(small, rest)]


def small(label: str) -> str:
    """Return a label as it stands within a sentence."""
    return label[:1].lower() + label[1:]
