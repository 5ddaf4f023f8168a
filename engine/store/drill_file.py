"""Drills on disk: one file a drill, one line an entry, each line safe before the next prompt."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from chamberwise.engine.drill.codec import UnreadableEntryError, decode, encode
from chamberwise.engine.drill.entries import Began, Ended, Entry
from chamberwise.engine.store.journal_file import append_lines, lines_of

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
    stamp = now.strftime("%Y%m%dT%H%M%S")
    number = 1
    while (path := folder / f"{pathway}-{stamp}-{number}{ENDING}").exists():
        number += 1
    return path


def append_entries(path: Path, entries: Sequence[Entry]) -> None:
    """Add entries and return once they are on disk. Raises `OSError`."""
    append_lines(path, [encode(entry) for entry in entries])


def load_drill(path: Path) -> KeptDrill:
    """Return the entries of a drill; half-written lines are counted and left out."""
    entries: list[Entry] = []
    torn = 0
    for line in lines_of(path):
        try:
            entries.append(decode(line))
        except UnreadableEntryError:
            torn += 1
    return KeptDrill(path, tuple(entries), torn)


def kept_drills(folder: Path, pathway: str | None = None) -> Iterator[KeptDrill]:
    """Yield the drills of a folder, newest first, of one pathway or of all."""
    named = f"{pathway}-*{ENDING}" if pathway else f"*{ENDING}"
    for path in sorted(folder.glob(named), key=lambda each: each.stat().st_mtime, reverse=True):
        drill = load_drill(path)
        if drill.entries and isinstance(drill.entries[0], Began):
            yield drill
