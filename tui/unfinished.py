"""Finding the walk to go on with: the newest unfinished one of a pathway."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.digest import digest
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.store.journal_file import Kept, kept
from chamberwise.engine.walk.entries import Began, Moved
from chamberwise.engine.walk.walk import JournalError, Walk, fold
from chamberwise.tui.sitting import Clock, Sitting


@dataclass(frozen=True, slots=True)
class Unfinished:
    """A walk kept and not finished. `walk` is `None` where its pathway is no longer the same."""

    kept: Kept
    walk: Walk | None

    @property
    def began(self) -> datetime:
        """When it began."""
        return self.kept.entries[0].at

    @property
    def steps(self) -> int:
        """How many moves of it stand or, for a changed pathway, were ever made."""
        if self.walk is not None:
            return len(self.walk.legs)
        return sum(isinstance(entry, Moved) for entry in self.kept.entries)

    @property
    def changed(self) -> str:
        """Why it cannot go on, as a sentence; nothing where it can."""
        if self.walk is not None:
            return ""
        return _(
            "This walk began on {day} at {time}. Since then its pathway has changed, or this is "
            "another file of the same name, so the walk cannot go on here."
        ).format(day=f"{self.began:%Y-%m-%d}", time=f"{self.began:%H:%M}")

    @property
    def torn(self) -> str:
        """What was lost to an interruption, as a sentence; nothing where nothing was."""
        if not self.kept.torn:
            return ""
        return _(
            "The last entry was only half written when the walk was interrupted; it is left out."
        )


def newest_unfinished(loaded: Loaded, pathway: str, folder: Path) -> Unfinished | None:
    """Return the newest walk of a pathway that did not end. Unreadable folders hold none."""
    now = digest(loaded, pathway)
    try:
        for journal in kept(folder, pathway):
            if (found := _unfinished(loaded, journal, now)) is not None:
                return found
    except OSError:
        return None
    return None


def _unfinished(loaded: Loaded, journal: Kept, digest_now: str) -> Unfinished | None:
    began = journal.entries[0]
    assert isinstance(began, Began)
    try:
        walk = fold(loaded.library, journal.entries)
    except JournalError:
        return Unfinished(journal, None)
    if walk.is_over:
        return None
    return Unfinished(journal, walk if began.digest == digest_now else None)


def go_on(loaded: Loaded, found: Unfinished, clock: Clock) -> Sitting:
    """Return the sitting that goes on with a walk. Raises `InUseError`."""
    assert found.walk is not None
    sitting = Sitting(loaded, found.walk, clock, found.kept.path, len(found.kept.entries))
    sitting.mark_resumed()
    return sitting
