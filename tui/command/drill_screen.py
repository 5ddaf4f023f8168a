"""A drill on the screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from chamberwise.tui.command.drill_plain import drill_plain

if TYPE_CHECKING:
    from chamberwise.tui.command.drill import Ready
    from chamberwise.tui.rehearsal import Rehearsal


def drill_on_screen(ready: Ready, rehearsal: Rehearsal, remarks: tuple[str, ...]) -> int:
    """Drill on the screen and return the exit status."""
    return drill_plain(ready, rehearsal, None, remarks)
