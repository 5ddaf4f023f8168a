"""What is in the way of writing a file at a place, told before the work for it is done."""

from __future__ import annotations

import os
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _


def in_the_way(path: Path) -> str:
    """Return why no file can be written at a path and what to do, or nothing.

    What only writing can show, such as a full disk, is told when it is written.
    """
    if path.is_dir():
        return _("{path} is a folder. Name a file in it.").format(path=path)
    return no_folder(path.parent)


def no_folder(folder: Path) -> str:
    """Return why nothing can be written into a folder and what to do, or nothing."""
    if not folder.exists():
        return _("There is no folder {folder}. Make it first.").format(folder=folder)
    if not folder.is_dir():
        return _("{folder} is a file, not a folder. Name another place.").format(folder=folder)
    if not os.access(folder, os.W_OK | os.X_OK):
        return _("Nothing can be written into {folder}. Name another place.").format(folder=folder)
    return ""
