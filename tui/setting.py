"""What the screen program runs with: the library, the clock, and where walks are kept."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from chamberwise.engine.reading.library import Loaded
from chamberwise.tui.sitting import Clock


@dataclass(frozen=True, slots=True)
class Setting:
    """Everything from outside, passed in."""

    loaded: Loaded
    clock: Clock
    walks: Path
    colour: bool = True
    library: Path | None = None
    """The folder that the pathways come from; left out, those that come along."""
    sheets: tuple[Path, ...] = ()
    """The folders in which units' sheets are looked for."""
    base: Loaded | None = None
    """The pathways as they come along, in English; `loaded` may be those of a unit."""
