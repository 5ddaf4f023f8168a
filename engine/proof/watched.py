"""What a search found out about the machines that watch."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(slots=True)
class Watched:
    """The numbers of the machines that some walk loses, or that it ends without satisfying."""

    broken: set[int] = field(default_factory=set)
    states: int = 0
    """How many states were looked at."""
    stopped: bool = False
    """Whether there were more than it may look at."""
