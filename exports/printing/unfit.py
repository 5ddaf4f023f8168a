"""A sheet that cannot be read on its paper. Placing rooms raise it, so it knows nothing else."""

from __future__ import annotations


class UnfitError(Exception):
    """The content cannot be read on this paper from there; says why, and each way out."""

    def __init__(self, why: str, ways_out: tuple[str, ...]) -> None:
        super().__init__(why)
        self.why = why
        self.ways_out = ways_out

    def __reduce__(self) -> tuple[type[UnfitError], tuple[str, tuple[str, ...]]]:
        """Tell how it is made again, in another process."""
        return type(self), (self.why, self.ways_out)
