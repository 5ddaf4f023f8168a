"""The tables of the store of runs, and how an older store becomes one of today.

`events` is added to and never changed. The others follow from it; they stand
there so that a hundred thousand runs can be looked over in a moment.
"""

from __future__ import annotations

import sqlite3

MIGRATIONS = (
    """
    CREATE TABLE runs (run INTEGER PRIMARY KEY AUTOINCREMENT, began TEXT NOT NULL) STRICT;
    CREATE TABLE events (
        run INTEGER NOT NULL REFERENCES runs (run),
        number INTEGER NOT NULL,
        entry TEXT NOT NULL,
        PRIMARY KEY (run, number)
    ) STRICT, WITHOUT ROWID;
    CREATE TABLE results (
        run INTEGER PRIMARY KEY REFERENCES runs (run),
        began TEXT NOT NULL,
        pathway TEXT NOT NULL,
        edition TEXT NOT NULL,
        digest TEXT NOT NULL,
        scenario TEXT NOT NULL,
        seed INTEGER NOT NULL,
        mode TEXT NOT NULL,
        ending TEXT,
        counts INTEGER NOT NULL,
        context TEXT NOT NULL,
        result TEXT NOT NULL,
        harms INTEGER NOT NULL,
        orders_kept INTEGER NOT NULL,
        orders_of INTEGER NOT NULL,
        loops_closed INTEGER NOT NULL,
        loops_of INTEGER NOT NULL,
        sure_and_wrong INTEGER NOT NULL,
        departures INTEGER NOT NULL,
        recognition REAL,
        recognised INTEGER
    ) STRICT;
    CREATE INDEX results_in_time ON results (pathway, counts, began, run, result, edition);
    CREATE TABLE acts (
        run INTEGER NOT NULL REFERENCES runs (run),
        place INTEGER NOT NULL,
        act TEXT NOT NULL,
        grade INTEGER NOT NULL,
        seconds REAL,
        happened INTEGER,
        level INTEGER,
        PRIMARY KEY (run, place)
    ) STRICT, WITHOUT ROWID;
    CREATE TABLE met (
        drilled TEXT NOT NULL,
        pathway TEXT NOT NULL,
        step TEXT NOT NULL,
        answer TEXT NOT NULL,
        times INTEGER NOT NULL,
        PRIMARY KEY (drilled, pathway, step, answer)
    ) STRICT, WITHOUT ROWID;
    CREATE TABLE memories (
        pathway TEXT NOT NULL,
        act TEXT NOT NULL,
        context TEXT NOT NULL,
        stability REAL NOT NULL,
        difficulty REAL NOT NULL,
        due TEXT NOT NULL,
        last TEXT NOT NULL,
        PRIMARY KEY (pathway, act, context)
    ) STRICT, WITHOUT ROWID;
    """,
)


class NewerStoreError(RuntimeError):
    """A newer program wrote the store; `args[0]` is the version it has."""


def brought_up_to_date(database: sqlite3.Connection) -> None:
    """Make the tables that are missing, whole or not at all. Raises `NewerStoreError`."""
    (version,) = database.execute("PRAGMA user_version").fetchone()
    if version > len(MIGRATIONS):
        raise NewerStoreError(version)
    if version == len(MIGRATIONS):
        return
    database.execute("BEGIN IMMEDIATE")
    try:
        (version,) = database.execute("PRAGMA user_version").fetchone()
        for script in MIGRATIONS[version:]:
            for statement in script.split(";"):
                database.execute(statement)
        database.execute(f"PRAGMA user_version = {len(MIGRATIONS)}")
        database.execute("COMMIT")
    except BaseException:
        if database.in_transaction:  # a full disk has ended it already
            database.execute("ROLLBACK")
        raise
