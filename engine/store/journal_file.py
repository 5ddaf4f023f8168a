"""Journals on disk: one file a walk, one line an entry, each line safe before the walk goes on."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TypeVar

from chamberwise.engine.walk.codec import UnreadableEntryError, decode, encode
from chamberwise.engine.walk.entries import Began, Entry
from filelock import FileLock, Timeout

ENDING = ".walk.jsonl"

Item = TypeVar("Item")


class InUseError(RuntimeError):
    """Another program is writing this journal."""


@dataclass(frozen=True, slots=True)
class Kept:
    """A journal as read back. `torn` counts lines that an interruption left half written."""

    path: Path
    entries: tuple[Entry, ...]
    torn: int


def new_path(folder: Path, pathway: str, now: datetime, ending: str = ENDING) -> Path:
    """Return a path for a new journal that no other journal has."""
    stamp = now.strftime("%Y%m%dT%H%M%S")
    number = 1
    while True:
        name = f"{pathway}-{stamp}-{number}{ending}"
        if not (folder / name).exists():
            return folder / name
        number += 1


@contextmanager
def writing(path: Path) -> Iterator[None]:
    """Hold a journal for one writer. Raises `InUseError` when another program has it."""
    path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    lock = FileLock(path.with_suffix(".lock"))
    try:
        lock.acquire(timeout=0)
    except Timeout as error:
        raise InUseError(str(path)) from error
    try:
        yield
    finally:
        lock.release()


def append(path: Path, entries: tuple[Entry, ...]) -> None:
    """Add entries and return once they are on disk. Raises `OSError`."""
    append_lines(path, [encode(entry) for entry in entries])


def append_lines(path: Path, lines: Iterable[str]) -> None:
    """Add lines to a file and return once they are on disk. Raises `OSError`."""
    text = "".join(f"{line}\n" for line in lines).encode(errors="backslashreplace")
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_APPEND, 0o600)
    try:
        if _ends_torn(path):
            text = b"\n" + text
        written = 0
        while written < len(text):
            written += os.write(handle, text[written:])
        os.fsync(handle)
    finally:
        os.close(handle)


def _ends_torn(path: Path) -> bool:
    with path.open("rb") as stream:
        if stream.seek(0, os.SEEK_END) == 0:
            return False
        stream.seek(-1, os.SEEK_END)
        return stream.read() != b"\n"


def load(path: Path) -> Kept:
    """Return the entries of a journal; half-written lines are counted and left out."""
    return Kept(path, *entries_of(path, decode, UnreadableEntryError))


def entries_of(
    path: Path, read: Callable[[str], Item], unreadable: type[Exception]
) -> tuple[tuple[Item, ...], int]:
    """Return the entries of a file of lines, and how many of its lines were only half written."""
    entries: list[Item] = []
    torn = 0
    for line in lines_of(path):
        try:
            entries.append(read(line))
        except unreadable:
            torn += 1
    return tuple(entries), torn


def newest_first(folder: Path, pathway: str | None, ending: str) -> list[Path]:
    """Return the journals of a folder by age, of one pathway or of all."""
    named = f"{pathway}-*{ending}" if pathway else f"*{ending}"
    return sorted(folder.glob(named), key=lambda path: path.stat().st_mtime, reverse=True)


def lines_of(path: Path) -> list[str]:
    """Return the lines of a journal that hold anything, whole or torn. Raises `OSError`."""
    text = path.read_text(encoding="utf-8", errors="replace")
    return [line for line in text.split("\n") if line.strip()]


def kept(folder: Path, pathway: str | None = None) -> Iterator[Kept]:
    """Yield the journals of a folder, newest first, of one pathway or of all."""
    for path in newest_first(folder, pathway, ENDING):
        journal = load(path)
        first = journal.entries[0] if journal.entries else None
        if isinstance(first, Began) and pathway in (None, first.pathway):
            yield journal
