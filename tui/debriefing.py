"""What a drill that is over comes to: its debrief, and what is kept of it for the days to come."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.drill.fold import Drill, as_run
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.present.parts import Part

if TYPE_CHECKING:
    from chamberwise.engine.drill.debriefing.debrief import Debrief
    from chamberwise.exports.debrief.content import DebriefContent

Clock = Callable[[], datetime]


@dataclass(frozen=True, slots=True)
class Debriefing:
    """How a drill is debriefed: `store` keeps runs where one is given, `page` is to be written."""

    clock: Clock
    store: Path | None = None
    page: Path | None = None

    def __call__(self, drill: Drill) -> list[Part]:
        """Keep what follows from a drill, and return its debrief line by line."""
        from chamberwise.engine.drill.debriefing.debrief import debrief
        from chamberwise.exports.debrief.extract import debrief_content
        from chamberwise.exports.debrief.text import debrief_text

        run, remarks = as_run(drill), list[str]()
        found = debrief(drill.scenario.library, run)
        if self.store is not None and run.ended is not None:
            next_due = _kept(self.store, drill, found, self.clock(), remarks.append)
            found = replace(found, next_due=next_due)
        content = debrief_content(drill.scenario.library, found)
        if self.page is not None:
            remarks += _written(self.page, content, run.began.on.date())
        told = [_line(line) for line in debrief_text(content).rstrip("\n").split("\n")]
        return [*(Part(remark, "! ") for remark in remarks), *told]


def is_page(path: Path) -> bool:
    """Whether a debrief can be written in the form of this name: `.pdf` or `.txt`."""
    return path.suffix.lower() in (".pdf", ".txt")


def _line(text: str) -> Part:
    said = text.lstrip(" ")
    return Part(said, " " * (len(text) - len(said)))


def _kept(
    store: Path, drill: Drill, found: Debrief, now: datetime, warn: Callable[[str], None]
) -> date | None:
    """Keep a run, and return when something of its pathway is due next."""
    from chamberwise.engine.drill.remembering.remembered import STAGE, remember
    from chamberwise.engine.drill.spacing.due import due
    from chamberwise.engine.store.runs_file import RunsError
    from chamberwise.engine.store.runs_or_none import runs_or_none

    runs = runs_or_none(store, warn)
    if runs is None:
        return None
    try:
        context = drill.scenario.truth.get(STAGE, "")
        runs.keep(drill.journal, remember(found.measured, context))
        next_on = due(runs.memories(drill.scenario.pathway), now).next_on
        return next_on.date() if next_on else None
    except RunsError as error:
        warn(error.args[0])
        return None
    finally:
        runs.close()


def _written(path: Path, content: DebriefContent, on: date) -> list[str]:
    """Write the page, and return what to say of it."""
    from chamberwise.engine.store.whole_file import write_bytes_whole
    from chamberwise.exports.debrief.sheet import debrief_paper
    from chamberwise.exports.debrief.text import debrief_text
    from chamberwise.exports.printing.telling_audits import told_of_paper
    from chamberwise.exports.printing.unfit import UnfitError
    from chamberwise.exports.typesetting.compiling import UnprintableError

    try:
        if path.suffix.lower() == ".txt":
            found = None
            write_bytes_whole(path, debrief_text(content).encode())
        else:
            found = debrief_paper(content, on)
            write_bytes_whole(path, found.pdf)
    except OSError as error:
        told = _("The debrief cannot be written as {path}: {reason}.")
        return [told.format(path=path, reason=error.strerror)]
    except (UnfitError, UnprintableError) as error:
        told = _("The debrief does not go on a page: {reason} Name a .txt file instead.")
        return [told.format(reason=error.args[0])]
    saved = _("The debrief is saved as {path}.").format(path=path)
    return [saved, *(told_of_paper(found.report) if found else ())]
