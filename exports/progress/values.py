"""Runs as rows for a table and as plain values for other programs."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from typing import Any

from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.drill.remembering.remembered import Remembered

COLUMNS = (
    "on",
    "pathway",
    "edition",
    "scenario",
    "seed",
    "stage",
    "mode",
    "ending",
    "counts",
    "result",
    "grave harms",
    "critical acts left out",
    "critical acts",
    "orders kept",
    "orders",
    "loops closed",
    "loops",
    "sure and wrong",
    "departures",
    "seconds to recognition",
    "recognised",
)


def as_csv(runs: Iterable[Remembered]) -> str:
    """Return the runs as CSV with a head; the line end is that of RFC 4180."""
    stream = io.StringIO()
    writer = csv.writer(stream)
    writer.writerow(COLUMNS)
    writer.writerows(
        [_told(value) for value in as_value(run).values()][: len(COLUMNS)] for run in runs
    )
    return stream.getvalue()


def as_value(run: Remembered) -> dict[str, Any]:
    """Return a run as plain values: those of `COLUMNS`, then its critical acts."""
    recognition = run.recognition
    return {
        "on": run.on.isoformat(),
        "pathway": run.pathway,
        "edition": run.edition,
        "scenario": run.scenario,
        "seed": run.seed,
        "stage": run.context,
        "mode": run.mode.value,
        "ending": run.ending.value if run.ending else None,
        "counts": run.counts,
        "result": run.result.value,
        "grave harms": run.harms,
        "critical acts left out": run.omitted.count,
        "critical acts": run.omitted.of,
        "orders kept": run.orders.count,
        "orders": run.orders.of,
        "loops closed": run.loops.count,
        "loops": run.loops.of,
        "sure and wrong": run.sure_and_wrong,
        "departures": run.departures,
        "seconds to recognition": recognition.seconds if recognition else None,
        "recognised": recognition.happened if recognition else None,
        "acts": [
            {
                "act": act.act,
                "grade": act.grade.name.lower(),
                "level": None if act.level is None else act.level.name.lower(),
                **_timed(act.duration),
            }
            for act in run.acts
        ],
    }


def _timed(duration: Duration | None) -> dict[str, Any]:
    if duration is None:
        return {"seconds": None, "done": None}
    return {"seconds": duration.seconds, "done": duration.happened}


def _told(value: Any) -> Any:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "" if value is None else value
