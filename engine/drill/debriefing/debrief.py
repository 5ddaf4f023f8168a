"""The debrief of one run: everything its page says, before it is put into words."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from chamberwise.engine.drill.aligning.align import Departure
from chamberwise.engine.drill.debriefing.talking import Talking, talking
from chamberwise.engine.drill.debriefing.timeline import Row, Silence, rows, silences
from chamberwise.engine.drill.entries import Cued, Injected, NotUnderstood
from chamberwise.engine.drill.measures.measured import Measured, measure
from chamberwise.engine.drill.run import Run
from chamberwise.engine.model.library import Library


@dataclass(frozen=True, slots=True)
class Debrief:
    """What a run's page says; `shown` is what could last be perceived before it first departed."""

    measured: Measured
    rows: tuple[Row, ...]
    silences: tuple[Silence, ...]
    first_departure: Departure | None
    shown: Cued | None
    talking: Talking
    injected: tuple[Injected, ...]
    not_understood: tuple[NotUnderstood, ...]
    next_due: date | None


def debrief(library: Library, run: Run, next_due: date | None = None) -> Debrief:
    """Return the debrief of a run; it hangs on the journal and what is passed in, nothing else."""
    measured = measure(library, run)
    first = measured.first_departure
    return Debrief(
        measured=measured,
        rows=rows(run),
        silences=silences(run),
        first_departure=first,
        shown=_shown_before(run, first),
        talking=talking(measured),
        injected=tuple(each for each in run.entries if isinstance(each, Injected)),
        not_understood=tuple(each for each in run.entries if isinstance(each, NotUnderstood)),
        next_due=next_due,
    )


def _shown_before(run: Run, departure: Departure | None) -> Cued | None:
    """Return the last cue before it; what it led to itself is no cue for it."""
    if departure is None:
        return None
    event = departure.event or departure.then
    number = event.number if event else len(run.journal)
    before = {id(entry) for entry in run.journal[:number]}
    cues = [each for each in run.entries if isinstance(each, Cued) and id(each) in before]
    return cues[-1] if cues else None
