"""What a typed line was found to mean."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.drill.entries import Certainty
from chamberwise.engine.drill.wording.phrasebook import Target


@dataclass(frozen=True, slots=True)
class Understood:
    """What a line means. `taken` is sure, `first` is to be done before it unless it was.

    `asked` are the targets to choose from where it is not sure, the likeliest first.
    """

    taken: tuple[Target, ...] = ()
    first: tuple[Target, ...] = ()
    asked: tuple[Target, ...] = ()
    says_trigger: bool = False
    asks_trigger: bool = False
    """Whether it only asks whether this is it: then nobody has been told."""
    only_not_done: bool = False
    only_exclaims: bool = False
    left_open: str = ""
    """Words of the line that nothing was taken from, where something was taken from others."""
    certainty: Certainty | None = None
