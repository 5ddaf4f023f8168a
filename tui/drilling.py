"""A drill begun from the library: of the pathway marked, as a rehearsal."""

from __future__ import annotations

import random
from pathlib import Path

from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.drill.entries import Mode
from chamberwise.engine.drill.generate import NoScenarioError
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.drills import read_drills
from chamberwise.engine.store.home import drills as drills_folder
from chamberwise.engine.store.home import runs_path
from chamberwise.tui.debriefing import Debriefing
from chamberwise.tui.drill_remarks import drill_remarks
from chamberwise.tui.in_language import drills_in_language
from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.rehearsing import SEEDS, rehearse, scenario_of, stopwatch
from chamberwise.tui.setting import Setting


class NoDrillError(RuntimeError):
    """There is nothing to drill; `args[0]` says why."""


def drill_of(setting: Setting, pathway: str) -> tuple[Rehearsal, tuple[str, ...]]:
    """Return a rehearsal that has just begun, and what to say of its language before.

    Raises `NoDrillError`.
    """
    loaded = setting.loaded
    folder = Path(loaded.file_of[pathway]).parent
    drills = drills_in_language(read_drills(folder), folder)
    if drills.problems:
        raise NoDrillError("\n".join(problem_text(each, drills.texts) for each in drills.problems))
    if pathway not in drills.books:
        raise NoDrillError(_("Nobody has written drills of this pathway yet."))
    try:
        scenario = scenario_of(loaded, drills, pathway, random.randrange(SEEDS))
    except NoScenarioError as error:
        raise NoDrillError(str(error)) from error
    now = setting.clock()
    kept_in = drills_folder()
    rehearsal = rehearse(
        loaded, drills, scenario, Mode.REHEARSE, now, stopwatch(), kept_in, waits=True
    )
    rehearsal.debriefing = Debriefing(setting.clock, runs_path())
    return rehearsal, drill_remarks(loaded.library, drills, pathway)
