"""A drill on the screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from chamberwise.engine.store.home import walks
from chamberwise.exports.record.standing import STANDING
from chamberwise.tui.command.output import product
from chamberwise.tui.command.status import Status
from chamberwise.tui.present.parts import text_lines
from chamberwise.tui.setting import Setting
from chamberwise.tui.sitting import local_time
from chamberwise.tui.teaming import debriefed
from chamberwise.tui.terminal import line_width, wants_colour

if TYPE_CHECKING:
    from chamberwise.tui.command.drill import Ready
    from chamberwise.tui.rehearsal import Rehearsal


def drill_on_screen(ready: Ready, rehearsal: Rehearsal, remarks: tuple[str, ...]) -> int:
    """Drill on the screen and return the exit status."""
    from chamberwise.tui.app import WalkProgram

    setting = Setting(ready.loaded, local_time, walks(), wants_colour())
    program = WalkProgram(setting, remarks=remarks, rehearsal=rehearsal)
    status = program.run() or Status.CLEAN
    if rehearsal.is_over:
        product("\n".join(text_lines(debriefed(rehearsal), line_width())))
    elif rehearsal.path is not None:
        product(f"The drill is kept. To go on with it:\n{ready.go_on_with}")
    product(STANDING)
    return status
