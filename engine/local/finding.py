"""Which local sheets lie in some folders, told by their first lines; and the pathway beside one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from pathlib import Path

from chamberwise.engine.reading.library import File, Loaded, assemble, read_file

_HEAD = re.compile(rb"^local sheet\s*:", re.MULTILINE)
FIRST_BYTES = 8192
"""The head of a sheet stands in them."""


def sheets_in(folders: Iterable[Path]) -> tuple[File, ...]:
    """Return the local sheets that lie in some folders themselves, by folder and name, each once.

    What cannot be opened is passed over: nobody asked for that file by name.
    """
    found: dict[Path, File] = {}
    for path in _candidates(folders):
        if path.resolve() not in found and _says_so(path):
            found[path.resolve()] = read_file(path)
    return tuple(found.values())


def _candidates(folders: Iterable[Path]) -> Iterator[Path]:
    for folder in folders:
        try:
            yield from sorted(each for each in folder.iterdir() if _is_yaml(each))
        except OSError:
            continue


def _is_yaml(path: Path) -> bool:
    return path.suffix.lower() in (".yaml", ".yml")


def _says_so(path: Path) -> bool:
    try:
        with path.open("rb") as file:
            return _HEAD.search(file.read(FIRST_BYTES)) is not None
    except OSError:
        return False


def base_beside(below: Loaded, sheet: File) -> Path | None:
    """Return the pathway that a sheet lies over, where that is a file beside it.

    A pathway of the library is never looked for elsewhere.
    """
    over = sheet.sheet.local.over if sheet.sheet else ""
    path = Path(sheet.shown_as).parent / f"{over}.yaml"
    return path if over and over not in below.file_of and path.is_file() else None


def with_base_beside(below: Loaded, sheet: File) -> Loaded:
    """Return a library with the pathway beside a sheet that lies over it, if there is one."""
    path = base_beside(below, sheet)
    return below if path is None else assemble([*below.files.values(), read_file(path)])
