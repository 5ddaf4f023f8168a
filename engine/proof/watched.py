"""What a search found out about the machines that watch."""

from __future__ import annotations

from dataclasses import dataclass, field

from chamberwise.engine.model.library import Place


@dataclass(slots=True)
class Watched:
    """By the number of a machine the step at which it was first lost.

    `unkept` has those of walks that ended there without what was asked for.
    """

    lost: dict[int, Place] = field(default_factory=dict)
    unkept: dict[int, Place] = field(default_factory=dict)
    states: int = 0
    """How many states were looked at."""
    stopped: bool = False
    """Whether there were more than it may look at."""
