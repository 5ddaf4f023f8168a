"""Whether arrows go round at all: most often they do not, and that is soon said."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from graphlib import CycleError, TopologicalSorter


def has_ring(arrows: Mapping[str, Iterable[str]]) -> bool:
    """Whether some arrows lead from a step back to itself."""
    try:
        TopologicalSorter(arrows).prepare()
    except CycleError:
        return True
    return False
