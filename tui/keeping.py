"""Saving the record of a walk on request. A record never writes over a file that was there."""

from __future__ import annotations

import os
from collections.abc import Collection
from itertools import count
from pathlib import Path

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.record.extract import record_of
from chamberwise.exports.record.save import NotSavedError, save_record
from chamberwise.tui.sitting import Sitting

NOTHING_DONE = N_("Nothing was done, so no record is written.")


def default_path(sitting: Sitting, home: Path) -> Path:
    """Return where the record of a walk goes when no other place is named."""
    began = sitting.walk.began
    return home / "records" / f"{began.pathway}-{began.at:%Y%m%dT%H%M%S}.txt"


def is_taken(path: Path, ours: Collection[Path] = ()) -> bool:
    """Whether there is a file of that name that is not one of ours."""
    return path not in ours and os.path.lexists(path)


def free_name(path: Path, ours: Collection[Path] = ()) -> Path:
    """Return the path or, where it is taken, the next one with a number that is not."""
    if not is_taken(path, ours):
        return path
    numbered = (path.with_stem(f"{path.stem}-{number}") for number in count(2))
    return next(each for each in numbered if not is_taken(each, ours))


def save_anew(sitting: Sitting, path: Path) -> Path:
    """Save the record under a name that is free, and return it. Raises `NotSavedError`."""
    path = free_name(path, sitting.records)
    save_record(record_of(sitting.walk, sitting.today), path)
    sitting.records.append(path)
    return path


def keep_record(sitting: Sitting, path: Path | None, home: Path) -> str:
    """Save the record where asked, else among the user's records; return what to say of it."""
    if not sitting.is_begun:
        return _(NOTHING_DONE)
    try:
        return _("The record is saved as {path}.").format(
            path=save_anew(sitting, path or default_path(sitting, home))
        )
    except NotSavedError as error:
        return str(error)
