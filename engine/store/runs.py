"""The runs of drills on disk. Journals are only added to; everything else follows from them."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from chamberwise.engine.drill.codec import UnreadableEntryError, decode, encode
from chamberwise.engine.drill.entries import Began, Entry, NotUnderstood
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.walked import Answer
from chamberwise.engine.drill.remembering.remembered import Remembered
from chamberwise.engine.drill.spacing.grading import Grade
from chamberwise.engine.drill.spacing.scheduling import Memory, after
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.words import ActId
from chamberwise.engine.store.runs_file import RunsError, opened, opened_to_read
from chamberwise.engine.store.runs_rows import (
    RESULTS,
    act_of,
    act_row,
    memory_of,
    memory_row,
    moment,
    remembered_of,
    result_row,
)


class Runs:
    """The store, open for writing or to be read alone. Raises `RunsError` where it is unusable."""

    def __init__(self, path: Path, *, to_read: bool = False) -> None:
        self._path = path
        self._database = opened_to_read(path) if to_read else opened(path)

    def close(self) -> None:
        """Close the store; what was written stays."""
        self._database.close()

    def keep(self, journal: Sequence[Entry], remembered: Remembered) -> int:
        """Keep a drill that is over, journal and all, whole or not at all; return its number.

        Of runs that count, each critical act is due again by how it went.
        """
        began = journal[0]
        assert isinstance(began, Began)
        with self._writing() as database:
            made = database.execute("INSERT INTO runs (began) VALUES (?)", (moment(began.on),))
            run = made.lastrowid
            assert run is not None
            database.executemany(
                "INSERT INTO events VALUES (?, ?, ?)",
                [(run, place, encode(entry)) for place, entry in enumerate(journal)],
            )
            self._follow(database, run, remembered)
        return run

    def _follow(self, database: sqlite3.Connection, run: int, remembered: Remembered) -> None:
        database.execute(RESULTS, result_row(run, remembered))
        database.executemany(
            "INSERT INTO acts VALUES (?, ?, ?, ?, ?, ?, ?)",
            [act_row(run, place, act) for place, act in enumerate(remembered.acts)],
        )
        database.executemany(
            "INSERT INTO met VALUES (?, ?, ?, ?, 1) ON CONFLICT DO UPDATE SET times = times + 1",
            [(remembered.pathway, *place, answer) for place, answer in remembered.met],
        )
        if remembered.counts:
            self._remember(database, remembered)

    def _remember(self, database: sqlite3.Connection, remembered: Remembered) -> None:
        for each in remembered.acts:
            key = (remembered.pathway, each.act, remembered.context)
            found = database.execute(
                "SELECT act, context, stability, difficulty, due, last FROM memories "
                "WHERE pathway = ? AND act = ? AND context = ?",
                key,
            ).fetchone()
            before = memory_of(found) if found else None
            now = max(remembered.on, before.last) if before else remembered.on
            memory = after(before, each.act, remembered.context, each.grade, now)
            database.execute(
                "INSERT OR REPLACE INTO memories VALUES (?, ?, ?, ?, ?, ?, ?)",
                memory_row(remembered.pathway, memory),
            )

    def pathways(self) -> tuple[str, ...]:
        """Return the pathways of which runs are recorded."""
        rows = self._read("SELECT DISTINCT pathway FROM results ORDER BY pathway")
        return tuple(pathway for (pathway,) in rows)

    def latest(self, pathway: str, most: int) -> tuple[Remembered, ...]:
        """Return the latest runs of a pathway, rehearsals among them, oldest first."""
        rows = self._read(
            "SELECT * FROM results WHERE pathway = ? ORDER BY began DESC, run DESC LIMIT ?",
            (pathway, most),
        )
        return tuple(self._whole(row) for row in reversed(rows))

    def _whole(self, row: tuple[Any, ...]) -> Remembered:
        acts = self._read("SELECT * FROM acts WHERE run = ? ORDER BY place", (row[0],))
        return remembered_of(row, tuple(act_of(each) for each in acts))

    def every(self, pathway: str) -> Iterator[Remembered]:
        """Yield every run of a pathway, rehearsals among them, oldest first."""
        rows = self._read("SELECT * FROM results WHERE pathway = ? ORDER BY began, run", (pathway,))
        return (self._whole(row) for row in rows)

    def with_injects(self, pathway: str, most: int) -> int:
        """Return in how many of the latest runs that count something happened meanwhile."""
        ((many,),) = self._read(
            'SELECT count(DISTINCT run) FROM events WHERE entry LIKE \'{"is":"Injected"%\' AND '
            "run IN (SELECT run FROM results WHERE pathway = ? AND counts = 1 "
            "ORDER BY began DESC, run DESC LIMIT ?)",
            (pathway, most),
        )
        return int(many)

    def results(self, pathway: str) -> tuple[Result, ...]:
        """Return how every run of a pathway that counts stands, oldest first."""
        rows = self._read(
            "SELECT result FROM results WHERE pathway = ? AND counts = 1 ORDER BY began, run",
            (pathway,),
        )
        by_name = {each.value: each for each in Result}
        return tuple(by_name[result] for (result,) in rows)

    def by_month(self, pathway: str) -> tuple[tuple[str, Result, int], ...]:
        """Return how many runs that count stand how, by month (`2026-11`), oldest first."""
        rows = self._read(
            "SELECT substr(began, 1, 7), result, count(*) FROM results "
            "WHERE pathway = ? AND counts = 1 GROUP BY 1, 2 ORDER BY 1, 2",
            (pathway,),
        )
        return tuple((month, Result(result), many) for month, result, many in rows)

    def memories(self, pathway: str) -> tuple[Memory, ...]:
        """Return what is remembered of a pathway's critical acts."""
        rows = self._read(
            "SELECT act, context, stability, difficulty, due, last FROM memories "
            "WHERE pathway = ? ORDER BY act, context",
            (pathway,),
        )
        return tuple(memory_of(row) for row in rows)

    def met(self, pathway: str) -> frozenset[Answer]:
        """Return the answers that any drill of a pathway came by, rehearsals among them."""
        rows = self._read("SELECT pathway, step, answer FROM met WHERE drilled = ?", (pathway,))
        return frozenset((Place(where, step), answer) for where, step, answer in rows)

    def editions(self, pathway: str) -> tuple[tuple[str, int], ...]:
        """Return how many runs that count there were of each edition, the first drilled first."""
        rows = self._read(
            "SELECT edition, count(*) FROM results WHERE pathway = ? AND counts = 1 "
            "GROUP BY edition ORDER BY min(began)",
            (pathway,),
        )
        return tuple((edition, many) for edition, many in rows)

    def tallies(self, pathway: str) -> Mapping[tuple[ActId, str], Share]:
        """Return of each critical act in each context how often it went well, of all that count.

        It went well where it was done, in its turn, without harm, and not told.
        """
        rows = self._read(
            "SELECT act, context, sum(grade > ?), count(*) FROM acts JOIN results USING (run) "
            "WHERE pathway = ? AND counts = 1 GROUP BY act, context ORDER BY act, context",
            (Grade.AGAIN.value, pathway),
        )
        return {(act, context): Share(well, of) for act, context, well, of in rows}

    def not_understood(self) -> tuple[tuple[str, int], ...]:
        """Return the words that no act was found for, the most frequent first."""
        rows = self._read('SELECT entry FROM events WHERE entry LIKE \'{"is":"NotUnderstood"%\'')
        times: dict[str, int] = {}
        for (line,) in rows:
            entry = self._entry(line)
            if isinstance(entry, NotUnderstood):
                typed = entry.typed.strip().lower()
                times[typed] = times.get(typed, 0) + 1
        return tuple(sorted(times.items(), key=lambda each: (-each[1], each[0])))

    def _entry(self, line: str) -> Entry:
        try:
            return decode(line)
        except UnreadableEntryError as error:
            raise RunsError(
                _(
                    "The store of drills {path} holds what is {reason}. It is left as it is. A "
                    "newer chamberwise may read it."
                ).format(path=self._path, reason=error.args[0])
            ) from error

    def _read(self, question: str, values: tuple[object, ...] = ()) -> list[tuple[Any, ...]]:
        try:
            return self._database.execute(question, values).fetchall()
        except sqlite3.Error as error:
            raise RunsError(
                _("The store of drills {path} cannot be read: {error}.").format(
                    path=self._path, error=error
                )
            ) from error

    @contextmanager
    def _writing(self) -> Iterator[sqlite3.Connection]:
        """Hold the store for one writer; what is written stands whole or not at all."""
        try:
            self._database.execute("BEGIN IMMEDIATE")
            try:
                yield self._database
                self._database.execute("COMMIT")
            except BaseException:
                if self._database.in_transaction:
                    self._database.execute("ROLLBACK")
                raise
        except sqlite3.Error as error:
            raise RunsError(
                _(
                    "The store of drills {path} cannot be written: {error}. What was written "
                    "before stays."
                ).format(path=self._path, error=error)
            ) from error
