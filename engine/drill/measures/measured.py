"""Everything that one run shows."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.drill.aligning.align import Departure, align
from chamberwise.engine.drill.measures.certainty import confident_errors
from chamberwise.engine.drill.measures.gates import Gates, gates
from chamberwise.engine.drill.measures.harm import Harmful, harmful
from chamberwise.engine.drill.measures.harmless import judged
from chamberwise.engine.drill.measures.loops import Loop, loops
from chamberwise.engine.drill.measures.omissions import passed_over
from chamberwise.engine.drill.measures.orders import Orders, orders
from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.drill.measures.times import Timed, recognition, times
from chamberwise.engine.drill.measures.walked import Answer, walked
from chamberwise.engine.drill.measures.weighing import weighed
from chamberwise.engine.drill.run import Event, Run
from chamberwise.engine.model.library import Library


@dataclass(frozen=True, slots=True)
class Measured:
    """What a run shows, measure by measure."""

    run: Run
    recognition: Duration | None
    acts: tuple[Timed, ...]
    orders: Orders
    harms: tuple[Harmful, ...]
    departures: tuple[Departure, ...]
    walked: tuple[Answer, ...]
    """The answers of the pathway that it came by."""
    confident_errors: tuple[Event, ...]
    loops: tuple[Loop, ...]
    gates: Gates

    @property
    def first_departure(self) -> Departure | None:
        """The first departure that matters; the first that is not harmless where none does."""
        real = [each for each in self.departures if not each.is_harmless]
        return next((each for each in real if each.matters), next(iter(real), None))


def measure(library: Library, run: Run) -> Measured:
    """Measure a run."""
    acts, pairs, harms = times(run), orders(run), harmful(library, run)
    aligned = align(library, run)
    departures = judged(library, run, aligned.departures, harms, pairs)
    departures = weighed(run, departures, harms, pairs)
    acts = passed_over(acts, departures)
    return Measured(
        run=run,
        recognition=recognition(run),
        acts=acts,
        orders=pairs,
        harms=harms,
        departures=departures,
        walked=walked(library, aligned),
        confident_errors=confident_errors(harms, departures),
        loops=loops(run),
        gates=gates(harms, acts),
    )
