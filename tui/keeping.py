"""Saving the record of a walk on request."""

from __future__ import annotations

from pathlib import Path

from chamberwise.exports.record.extract import record_of
from chamberwise.exports.record.save import NotSavedError, save_record
from chamberwise.tui.sitting import Sitting


def keep_record(sitting: Sitting, path: Path | None, home: Path) -> str:
    """Save the record where asked, else among the user's records; return what to say of it."""
    walk = sitting.walk
    stamp = walk.began.at.strftime("%Y%m%dT%H%M%S")
    path = path or home / "records" / f"{walk.began.pathway}-{stamp}.txt"
    try:
        save_record(record_of(walk, sitting.today), path)
    except NotSavedError as error:
        return str(error)
    return f"The record is saved as {path}."
