"""Which operations of a sheet bring something about: the fewest without which it would not be."""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable
from typing import TypeAlias

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.local_sheet import LocalSheet, Operation, Verb

Kept: TypeAlias = tuple[Pointer, ...]
"""The places of the operations that are carried out, in the order of the file."""


def causes(
    sheet: LocalSheet, what: Hashable, found: Callable[[Kept], Collection[Hashable]]
) -> tuple[Operation, ...]:
    """Return operations that bring something about together, each of them needed.

    `found` tells all that comes about with some operations alone. None are returned where it
    comes about without any; of several ways in which the sheet does it, the earliest is told.
    """
    if what in found(()):
        return ()
    kept = tuple(each.at for each in sheet.operations if each.verb is not Verb.REWORD)
    size = max(1, len(kept) // 2)
    while True:
        before = kept
        for end in range(len(kept), 0, -size):
            fewer = kept[: max(0, end - size)] + kept[end:]
            if what in found(fewer):
                kept = fewer
        if size == 1 and kept == before:
            return tuple(each for each in sheet.operations if each.at in kept)
        size = max(1, size // 2)


def with_only(base: Loaded, file: File, kept: Kept) -> Loaded | None:
    """Return the library with some operations of a sheet alone; nothing where they do not fit."""
    assert file.sheet is not None
    loaded = localised(base, file, {each.at for each in file.sheet.operations} - {*kept})
    return loaded if loaded.library.local is not None else None
