"""The store of runs where there is one, and going on without where there is not."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.runs import Runs
from chamberwise.engine.store.runs_file import RunsError


def runs_or_none(path: Path, warn: Callable[[str], None]) -> Runs | None:
    """Return the store; where it is unusable, say so once and return None: drills go on."""
    try:
        return Runs(path)
    except RunsError as error:
        warn(_("{reason} This drill is not kept.").format(reason=error.args[0]))
        return None
