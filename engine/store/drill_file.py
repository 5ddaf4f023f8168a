"""Drills on disk: one file a drill, one line an entry, each line safe before the next prompt."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from chamberwise.engine.drill.codec import UnreadableEntryError, decode, encode
from chamberwise.engine.drill.entries import Began, Ended, Entry
from chamberwise.engine.store.journal_file import append_lines, entries_of, new_path, newest_first

ENDING = ".drill.jsonl"


@dataclass(frozen=True, slots=True)
class KeptDrill:
    """A drill's journal as read back. `torn` counts lines an interruption left half written."""

    path: Path
    entries: tuple[Entry, ...]
    torn: int

    @property
    def is_over(self) -> bool:
        """Whether it came to an end by itself."""
        return any(isinstance(entry, Ended) for entry in self.entries)


def new_drill_path(folder: Path, pathway: str, now: datetime) -> Path:
    """Return a path for a new drill that no other drill has."""
    return new_path(folder, pathway, now, ENDING)


def append_entries(path: Path, entries: Sequence[Entry]) -> None:
    """Add entries and return once they are on disk. Raises `OSError`."""
    append_lines(path, [encode(entry) for entry in entries])


def load_drill(path: Path) -> KeptDrill:
    """Return the entries of a drill; half-written lines are counted and left out."""
    return KeptDrill(path, *entries_of(path, decode, UnreadableEntryError))


def kept_drills(folder: Path, pathway: str | None = None) -> Iterator[KeptDrill]:
    """Yield the drills of a folder, newest first, of one pathway or of all."""
    for path in newest_first(folder, pathway, ENDING):
        drill = load_drill(path)
        first = drill.entries[0] if drill.entries else None
        if isinstance(first, Began) and pathway in (None, first.pathway):
            yield drill
