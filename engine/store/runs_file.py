"""Opening the store of runs: one SQLite file, its own owner's alone, safe under several writers."""

from __future__ import annotations

import os
import sqlite3
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.runs_tables import MIGRATIONS, NewerStoreError, brought_up_to_date
from filelock import FileLock, Timeout

PATIENCE = 30.0
"""Seconds to wait for another writer: the database asks again every 0.1 s, and others may be quick

to come back, so that a few seconds are not always enough on a busy machine.
"""

_SHARED = {"nfs", "nfs4", "cifs", "smb3", "smbfs", "9p", "fuse.sshfs", "afs", "ncpfs", "davfs"}
_MOUNTS = Path("/proc/self/mounts")


class RunsError(RuntimeError):
    """The store of runs cannot be used; `args[0]` says why and what to do, as sentences."""


def opened(path: Path, mounts: Path = _MOUNTS) -> sqlite3.Connection:
    """Return the database of a store, made where there is none. Raises `RunsError`.

    A journal beside the file (WAL) lets readers read while one writes, but asks for memory that a
    network share does not share: there the plain journal is used. Two programs that open a new
    store at once take turns, for the database itself gives up where it changes its journal.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))
        with FileLock(path.with_suffix(".lock"), timeout=PATIENCE):
            return _set_up(path, mounts)
    except Timeout as error:
        raise RunsError(
            _(
                "The store of drills {path} is held by another program. Try again once it is done."
            ).format(path=path)
        ) from error
    except OSError as error:
        raise _out_of_reach(path, error) from error


def _set_up(path: Path, mounts: Path) -> sqlite3.Connection:
    try:
        database = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
    except sqlite3.Error as error:
        raise _unusable(path, error) from error
    try:
        journal = "DELETE" if is_on_a_share(path, mounts) else "WAL"
        database.execute(f"PRAGMA journal_mode = {journal}")
        database.execute("PRAGMA synchronous = FULL")
        database.execute("PRAGMA foreign_keys = ON")
        brought_up_to_date(database)
    except NewerStoreError as error:
        database.close()
        raise _newer(path) from error
    except sqlite3.Error as error:
        database.close()
        raise _unusable(path, error) from error
    return database


def opened_to_read(path: Path) -> sqlite3.Connection:
    """Return the database of a store that is there, never changing it. Raises `RunsError`.

    One in which nothing could be written yet, as on a full disk, holds no runs.
    """
    if path.stat().st_size == 0:
        nothing = sqlite3.connect(":memory:", isolation_level=None)
        brought_up_to_date(nothing)
        return nothing
    where, failed = path.resolve().as_uri(), None
    for how in ("mode=ro", "immutable=1"):  # beside a store on a disk that is read-only
        try:
            database = sqlite3.connect(f"{where}?{how}", PATIENCE, uri=True)
            (version,) = database.execute("PRAGMA user_version").fetchone()
            database.execute("SELECT 1 FROM results LIMIT 1").fetchone()
        except sqlite3.Error as error:
            failed = error
            continue
        if version > len(MIGRATIONS):
            database.close()
            raise _newer(path)
        return database
    assert failed is not None
    raise _unusable(path, failed) from failed


def is_on_a_share(path: Path, mounts: Path = _MOUNTS) -> bool:
    """Whether a path lies on a file system of another machine, as far as the system tells."""
    if str(path).startswith(("\\\\", "//")):
        return True
    try:
        lines = mounts.read_text(encoding="utf-8", errors="replace").splitlines()
    except OSError:
        return False
    whole = path.resolve()
    kinds = [
        (len(words[1]), words[2])
        for words in (line.split() for line in lines)
        if len(words) > 2 and whole.is_relative_to(words[1].replace("\\040", " "))
    ]
    return bool(kinds) and max(kinds)[1] in _SHARED


def _unusable(path: Path, error: sqlite3.Error) -> RunsError:
    if getattr(error, "sqlite_errorcode", None) == sqlite3.SQLITE_FULL:
        return RunsError(
            _("The store of drills {path} cannot be written: the disk is full. Make room.").format(
                path=path
            )
        )
    return RunsError(
        _(
            "The store of drills {path} cannot be used: {reason}. It is left as it is. Put "
            "it right from a backup, or move it away to begin a new one."
        ).format(path=path, reason=error)
    )


def _out_of_reach(path: Path, error: OSError) -> RunsError:
    reason = error.strerror or type(error).__name__
    return RunsError(
        _(
            "The store of drills {path} cannot be used: {reason}. Put its folder right, or name "
            "another one in CHAMBERWISE_HOME."
        ).format(path=path, reason=reason)
    )


def _newer(path: Path) -> RunsError:
    return RunsError(
        _(
            "The store of drills {path} was written by a newer chamberwise. It is left as "
            "it is. Use that version, or name another folder in CHAMBERWISE_HOME."
        ).format(path=path)
    )
