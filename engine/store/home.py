"""Where walks and the register are kept: `CHAMBERWISE_HOME`, else the system's place for it."""

from __future__ import annotations

import os
from pathlib import Path


def home() -> Path:
    """Return the folder for the user's own data; it need not exist yet."""
    named = os.environ.get("CHAMBERWISE_HOME")
    if named:
        return Path(named)
    from platformdirs import user_data_dir

    return Path(user_data_dir("chamberwise", appauthor=False))


def walks() -> Path:
    """Return the folder of walk journals."""
    return home() / "walks"


def register_path() -> Path:
    """Return the file that says what was printed and where it hangs."""
    return home() / "register.json"


def runs_path() -> Path:
    """Return the file in which the runs of drills are kept."""
    return home() / "drills.db"


def drills() -> Path:
    """Return the folder of drill journals."""
    return home() / "drills"
