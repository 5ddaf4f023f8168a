"""Synthetic pathways with rules that all hold, made of model objects: phases, loops, branches.

A phase of some fourteen steps looks at three findings or more, cleans in a bounded loop, fills,
cuts or presses, and closes, after which all it found is stale. Phases hang in a tree ("wide") or
follow one another ("deep").
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, Status
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Bound,
    Branch,
    Line,
    Outcome,
    Question,
    Row,
    Step,
)
from chamberwise.engine.model.words import NO_EFFECTS, About, Act, Effects, Finding, Value, Words

VALUES = ("clear", "partial", "full")
GROUPS = 8
"""Every phase belongs to one of eight groups, each with acts and rules of its own."""

STEPS_A_PHASE = 15
NAME = "synthetic"
KINDS = ("open", "clean", "fill", "cut", "press", "close", "admit")


def synthetic(steps: int, *, findings: int = 5, deep: bool = False, kept: int = 4) -> Library:
    """Return a library of one pathway of about so many steps.

    Of what it has looked at, a phase keeps as many findings in mind as `kept` says, every second
    phase one fewer.
    """
    names = [f"f{number}" for number in range(findings)]
    phases = max(1, steps // STEPS_A_PHASE)
    every = [
        step for phase in range(phases) for step in _Phase(phase, phases, names, deep, kept).steps()
    ]
    return Library(Words(), {NAME: _pathway(every, names)})


def finding_of(group: int, findings: int) -> str:
    """Return the finding that must be clear before a group cuts."""
    return f"f{group % findings}"


def _pathway(every: list[Step], names: list[str]) -> Pathway:
    acts = {f"{kind}-{group}": Act(f"{kind}-{group}", "") for kind in KINDS for group in range(8)}
    values = tuple(Value(name, name) for name in VALUES)
    day = date(2026, 11, 25)
    return Pathway(
        id=NAME,
        title="Synthetic pathway",
        summary="Made for measuring, without clinical meaning.",
        edition="0.1",
        status=Status.DRAFT,
        authors=(),
        approved_by=None,
        approved_on=None,
        reviewed=day,
        review_by=day,
        start=every[0].id,
        phases={"work": "Work"},
        steps={step.id: step for step in every},
        words=Words({name: Finding(name, name, About.EYE, values) for name in names}, acts),
        cases=None,
        accepted=(),
    )


class _Phase:
    """One phase on its way to steps."""

    def __init__(self, number: int, of: int, findings: list[str], deep: bool, kept: int) -> None:
        self.number, self.of, self.deep = number, of, deep
        self.group = number % GROUPS
        first = self.group % len(findings)
        self.looks = [findings[(first + place) % len(findings)] for place in range(len(findings))]
        self.kept = self.looks[: kept - number % 2]

    def at(self, step: str) -> str:
        return f"p{self.number}-{step}"

    def steps(self) -> Iterator[Step]:
        """Yield the steps of the phase."""
        field, edge, room, *more = self.looks
        anew = Effects(stale=tuple(self.looks))
        acts = ["open", "admit"] if self.number == 0 else ["open"]
        yield self._do("open", "see", acts, effects=anew)
        yield self._ask("see", field, {"clear": "edge", "partial full": "clean"})
        stale = Effects(stale=(field,))
        bound = Bound(2, self.at("edge"))
        yield self._do("clean", "see", ["clean"], effects=stale, bound=bound)
        yield self._ask("edge", edge, {"clear": "steady", "partial full": "hold", "": "hold"})
        yield self._do("hold", "steady", [])
        yield self._do("steady", "room", [])
        asked = [room, *more[: len(self.kept) - 3]]
        names = ["room", *(f"more{place}" for place in range(1, len(asked)))]
        for name, onward, finding in zip(names, [*names[1:], ""], asked, strict=True):
            to, last = onward or "choose", onward or "widen"
            yield self._ask(name, finding, {"clear": to, "partial full": last, "": last})
        yield self._do("widen", "choose", [])
        yield from self._ways()
        yield self._do("firm", "close", ["fill", "press"])
        yield self._do("close", "next", ["close"], effects=anew)
        yield self._end()

    def _ways(self) -> Iterator[Step]:
        clear = Condition(tuple((name, ("clear",)) for name in self.kept))
        yield Branch(
            id=self.at("choose"),
            phase="work",
            rows=(Row(clear, self.at("light")),),
            otherwise=self.at("firm"),
            not_known=self.at("firm"),
        )
        yield self._do("light", "cut", ["fill"])
        yield self._do("cut", "close", ["cut"])

    def _end(self) -> Step:
        onward = [self.number + 1] if self.deep else [2 * self.number + 1, 2 * self.number + 2]
        ahead = [f"p{each}-open" for each in onward if each < self.of]
        if not ahead:
            return Outcome(id=self.at("next"), phase="work", title="Finished")
        return self._ask("next", self.looks[-1], {"clear": ahead[0], "partial full": ahead[-1]})

    def _ask(self, name: str, finding: str, to: dict[str, str]) -> Question:
        """Return a question by the values of each answer; none for "cannot tell"."""
        answers = [
            Answer(
                values or CANNOT_TELL,
                tuple(values.split()),
                target if target.endswith("-open") else self.at(target),
            )
            for values, target in to.items()
        ]
        return Question(
            id=self.at(name), phase="work", ask=finding, question="?", answers=tuple(answers)
        )

    def _do(
        self,
        name: str,
        to: str,
        acts: list[str],
        *,
        effects: Effects = NO_EFFECTS,
        bound: Bound | None = None,
    ) -> Action:
        lines = tuple(Line("surgeon", "", act=f"{act}-{self.group}") for act in acts)
        return Action(
            id=self.at(name),
            phase="work",
            lines=lines or (Line("surgeon", ""),),
            go_to=self.at(to),
            effects=effects,
            bound=bound,
        )
