"""Walking a pathway by a script of findings, and keeping what a surgeon would look at.

A script names findings, or single steps, with the value to answer. `"in-chamber, none"` answers
the first asking and then every later one. What a script leaves out is answered by `GOOD`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path

from chamberwise.engine.meaning.advance import Silent, begin, moves, offered, passage
from chamberwise.engine.meaning.state import Answered, Done, Move, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import CANNOT_TELL, Action, Outcome, Question, Step
from chamberwise.engine.reading.library import load_library

from tests.conformance.trace import Event, KnownOnWalk, Trace

FOLDER = Path(__file__).parents[2] / "protocols"
MOST_MOVES = 600

RUPTURE = "posterior-capsule-rupture"
DROPPED = "dropped-nucleus"
VITRECTOMY = "anterior-vitrectomy"
CLOSING = "closing-and-after-care"
PATHWAYS = (RUPTURE, DROPPED, VITRECTOMY, CLOSING)

GOOD: Mapping[str, str] = {
    "tip": "in-the-eye",
    "stage": "nucleus",
    "suprachoroidal": "no-signs",
    "cornea": "clear-enough",
    "comfort": "comfortable",
    "lidocaine-total": "below-ceiling",
    "nucleus-behind": "nothing",
    "nucleus-front": "nothing",
    "fall": "stayed",
    "cortex": "left, none",
    "tear": "steady",
    "vitreous": "none",
    "vitreous-lost": "stayed-behind",
    "capsule-support": "front-rim-whole",
    "front-opening": "capturable",
    "posterior-opening": "round-and-secure",
    "lens": "optic-captured",
    "lens-hold": "steady",
    "lens-type": "three-piece",
    "power-fit": "acceptable",
    "three-piece-stock": "in-the-building",
    "scaffold-conditions": "one-missing",
    "trained-fixation": "untrained",
    "eye-for-chamber-lens": "suitable",
    "lens-without-capsule": "leave-aphakic",
    "trained-levitation": "untrained",
    "trained-pars-plana": "untrained",
    "cutter": "ready",
    "main-wound": "sealed",
    "wounds": "dry-and-clear",
    "fallen-piece": "nuclear",
    "left-behind": "nothing",
    "vitreoretinal-surgeon": "later",
    "lens-agreed": "not-agreed",
    "antibiotic-allergy": "none-known",
    "acetazolamide-risks": "none-found",
    "defect-risk": "posterior-polar",
}

Choose = Callable[[State, Question], str]
"""Which value, or "cannot tell", to answer at a question."""


@lru_cache(maxsize=1)
def library() -> Library:
    """Return the pathways as they are distributed."""
    return load_library(FOLDER).library


@dataclass
class Walk:
    """One walk from an entry to an outcome."""

    entry: str
    steps: list[Place] = field(default_factory=list)
    events: list[Event] = field(default_factory=list)
    plans: dict[str, list[str]] = field(default_factory=dict)
    """By column, what each step passed says for the table of cases, in order."""

    @property
    def outcome(self) -> str:
        return self.steps[-1].step

    @property
    def acts(self) -> list[str]:
        """The acts done, in order; what is only owed afterwards is not among them."""
        return self.trace.acts()

    @property
    def owed(self) -> list[str]:
        return [event.name for event in self.events if event.kind == "owed"]

    @property
    def trace(self) -> Trace:
        return Trace(self.entry, tuple(self.events))

    def plan(self, column: str) -> str:
        return "; ".join(self.plans.get(column, []))

    def says(self, step: Step) -> None:
        for column, said in step.plan:
            entries = self.plans.setdefault(column, [])
            if said not in entries:
                entries.append(said)


class NotOfferedError(Exception):
    """A script answers what the question does not offer."""


def walk(script: Mapping[str, str], entry: str = RUPTURE) -> Walk:
    """Walk a pathway by a script; what it leaves out is answered by `GOOD`."""
    return walk_by(library(), entry, _by_script({**GOOD, **script}))


def _by_script(script: Mapping[str, str]) -> Choose:
    times: dict[str, int] = {}

    def choose(_: State, question: Question) -> str:
        name = question.id if question.id in script else question.ask
        values = [value.strip() for value in script[name].split(",")]
        times[name] = times.get(name, 0) + 1
        return values[min(times[name], len(values)) - 1]

    return choose


def walk_by(of: Library, entry: str, choose: Choose) -> Walk:
    """Walk a pathway to an outcome, answering each question as `choose` says."""
    made = begin(of, entry)
    kept = Walk(entry)
    _pass(of, kept, made.state, made.silent)
    state = made.state
    for _ in range(MOST_MOVES):
        step = of.step(state.place)
        if isinstance(step, Outcome):
            return kept
        made = passage(of, state, _move(of, kept, state, step, choose))
        state = made.state
        _pass(of, kept, state, made.silent)
    raise AssertionError(f"no outcome after {MOST_MOVES} moves")


def _move(of: Library, kept: Walk, state: State, step: Step, choose: Choose) -> Move:
    if not isinstance(step, Question):
        assert moves(of, state), f"{state.place} cannot decide"
        return Done()
    value = choose(state, step)
    for answer in offered(of, state, step):
        if value in answer.means or value == answer.id == CANNOT_TELL:
            known = KnownOnWalk(of, state)
            kept.events.append(Event("asked", step.ask, known, value, step.id))
            return Answered(answer.id)
    raise NotOfferedError(f"{step.id} does not offer {value}")


def _pass(of: Library, kept: Walk, state: State, silent: tuple[Silent, ...]) -> None:
    for each in silent:
        place = getattr(each, "place", None)
        if place is not None:
            kept.says(of.step(place))
    kept.steps.append(state.place)
    step, known = of.step(state.place), KnownOnWalk(of, state)
    kept.says(step)
    if isinstance(step, Action):
        kept.events += [
            Event("did", line.act, known, step=step.id) for line in step.lines if line.act
        ]
    if isinstance(step, Outcome):
        kept.events += [Event("owed", line.act, known) for line in step.owed if line.act]
        kept.events.append(Event("ended", step.id, known, step=step.id))
