"""What is kept of a run: it follows from the journal, so that many can be looked over at once."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from chamberwise.engine.drill.entries import Ending, Level, Mode
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.loops import closure
from chamberwise.engine.drill.measures.measured import Measured
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.drill.measures.walked import Answer
from chamberwise.engine.drill.run import Run
from chamberwise.engine.drill.spacing.grading import Grade, grades
from chamberwise.engine.model.words import ActId

STAGE = "stage"
"""The finding by whose value the context of a drill goes, where there is one."""


@dataclass(frozen=True, slots=True)
class RememberedAct:
    """How one critical act went."""

    act: ActId
    grade: Grade
    duration: Duration | None
    level: Level | None
    """How much help there was; None where it was left out."""


@dataclass(frozen=True, slots=True)
class Remembered:
    """How one run went. `context` is the stage at which it happened."""

    on: datetime
    pathway: str
    edition: str
    digest: str
    scenario: str
    seed: int
    mode: Mode
    ending: Ending | None
    counts: bool
    context: str
    result: Result
    harms: int
    orders: Share
    """Pairs kept, of those that applied."""
    loops: Share
    sure_and_wrong: int
    departures: int
    recognition: Duration | None
    acts: tuple[RememberedAct, ...] = ()
    met: tuple[Answer, ...] = ()
    """The answers that it came by; of many runs only their sum is kept."""

    @property
    def omitted(self) -> Share:
        """The critical acts left out."""
        return Share(sum(each.level is None for each in self.acts), len(self.acts))


def context_of(run: Run) -> str:
    """Return the stage at which a drill began; nothing where it has none."""
    return run.events[0].truth.get(STAGE, "") if run.events else ""


def remember(of: Measured, context: str) -> Remembered:
    """Return what is kept of a run in some context."""
    run, graded = of.run, dict(grades(of))
    kept, broken = len(of.orders.kept), len(of.orders.broken)
    return Remembered(
        on=run.began.on,
        pathway=run.began.pathway,
        edition=run.began.edition,
        digest=run.began.digest,
        scenario=run.began.scenario,
        seed=run.began.seed,
        mode=run.began.mode,
        ending=run.ended.how if run.ended else None,
        counts=run.counts,
        context=context,
        result=of.gates.result,
        harms=len(of.gates.harm),
        orders=Share(kept, kept + broken),
        loops=closure(of.loops),
        sure_and_wrong=len(of.confident_errors),
        departures=sum(not each.is_harmless for each in of.departures),
        recognition=of.recognition,
        acts=tuple(
            RememberedAct(
                each.critical.act,
                graded[each.critical.act],
                each.duration,
                each.done.level if each.done else None,
            )
            for each in of.acts
            if each.was_due
        ),
        met=of.walked,
    )
