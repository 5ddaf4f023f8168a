"""Rows of the store of runs, and the values they stand for."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import Any

from chamberwise.engine.drill.entries import Ending, Level, Mode
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.drill.remembering.remembered import Remembered, RememberedAct
from chamberwise.engine.drill.spacing.grading import Grade
from chamberwise.engine.drill.spacing.scheduling import Memory

RESULTS = f"INSERT INTO results VALUES ({', '.join('?' * 21)})"


def moment(at: datetime) -> str:
    """Return a moment as it is kept: in UTC, so that moments sort as text."""
    return at.astimezone(UTC).isoformat(timespec="microseconds")


def result_row(run: int, of: Remembered) -> tuple[object, ...]:
    """Return the row of `results` for a run."""
    recognition = of.recognition
    return (
        run,
        moment(of.on),
        of.pathway,
        of.edition,
        of.digest,
        of.scenario,
        of.seed,
        of.mode.value,
        of.ending.value if of.ending else None,
        int(of.counts),
        of.context,
        of.result.value,
        of.harms,
        of.orders.count,
        of.orders.of,
        of.loops.count,
        of.loops.of,
        of.sure_and_wrong,
        of.departures,
        recognition.seconds if recognition else None,
        int(recognition.happened) if recognition else None,
    )


def remembered_of(row: Sequence[Any], acts: tuple[RememberedAct, ...] = ()) -> Remembered:
    """Return a run by its row of `results`."""
    return Remembered(
        on=datetime.fromisoformat(row[1]),
        pathway=row[2],
        edition=row[3],
        digest=row[4],
        scenario=row[5],
        seed=row[6],
        mode=Mode(row[7]),
        ending=Ending(row[8]) if row[8] else None,
        counts=bool(row[9]),
        context=row[10],
        result=Result(row[11]),
        harms=row[12],
        orders=Share(row[13], row[14]),
        loops=Share(row[15], row[16]),
        sure_and_wrong=row[17],
        departures=row[18],
        recognition=None if row[19] is None else Duration(row[19], bool(row[20])),
        acts=acts,
    )


def act_row(run: int, place: int, act: RememberedAct) -> tuple[object, ...]:
    """Return the row of `acts` for one critical act of a run."""
    took, level = act.duration, act.level
    return (
        run,
        place,
        act.act,
        act.grade.value,
        took.seconds if took else None,
        int(took.happened) if took else None,
        None if level is None else level.value,
    )


def act_of(row: Sequence[Any]) -> RememberedAct:
    """Return one critical act by its row of `acts`."""
    return RememberedAct(
        row[2],
        Grade(row[3]),
        None if row[4] is None else Duration(row[4], bool(row[5])),
        None if row[6] is None else Level(row[6]),
    )


def memory_row(pathway: str, memory: Memory) -> tuple[object, ...]:
    """Return the row of `memories` for one critical act in one context."""
    return (
        pathway,
        memory.act,
        memory.context,
        memory.stability,
        memory.difficulty,
        moment(memory.due),
        moment(memory.last),
    )


def memory_of(row: Sequence[Any]) -> Memory:
    """Return what is remembered of one critical act in one context."""
    act, context, stability, difficulty, due, last = row
    return Memory(
        act,
        context,
        stability,
        difficulty,
        datetime.fromisoformat(due),
        datetime.fromisoformat(last),
    )
