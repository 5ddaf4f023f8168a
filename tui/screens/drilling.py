"""Which screen a drill has: somebody's own, or that of a team."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.screens.drill import DrillScreen
from chamberwise.tui.screens.team_drill import TeamDrillScreen
from chamberwise.tui.teaming import team_of


def drill_screen(rehearsal: Rehearsal, remarks: Sequence[str] = ()) -> DrillScreen:
    """Return the screen of a drill that has begun."""
    team = team_of(rehearsal)
    return TeamDrillScreen(rehearsal, team, remarks) if team else DrillScreen(rehearsal, remarks)
