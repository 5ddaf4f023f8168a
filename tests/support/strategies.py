"""Random libraries and walks over them.

Tame libraries keep the rules of the format: answers cover their finding, every loop is bounded
and its exit leaves it, handovers never go round. Wild ones keep only the last of these, and have
arrows anywhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Branch,
    Handover,
    Line,
    Outcome,
    Question,
    Row,
    Step,
)
from chamberwise.engine.model.words import Act, Effects, Finding
from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from tests.support import build

_Drawn = TypeVar("_Drawn")

BYTES = 160
KINDS = ("ask", "ask", "ask", "do", "do", "branch", "branch", "hand over")


class _Choices:
    """Choices taken from drawn bytes: one strategy for all, so that drawing is quick."""

    def __init__(self, drawn: bytes) -> None:
        self._bytes = iter(drawn)

    def number(self, least: int, most: int) -> int:
        return least + next(self._bytes, 0) % (most - least + 1)

    def one(self, options: Sequence[_Drawn]) -> _Drawn:
        return options[self.number(0, len(options) - 1)]

    def chance(self, of_ten: int) -> bool:
        return self.number(0, 9) >= 10 - of_ten


@dataclass
class _Drawing:
    """One pathway while it is drawn."""

    choices: _Choices
    tame: bool
    name: str
    findings: list[Finding]
    acts: list[Act]
    others: list[Pathway]
    steps: list[Step] = field(default_factory=list)
    count: int = 0
    here: int = 0
    back_from: dict[int, int] = field(default_factory=dict)
    """By step that an arrow leads back to: the last step such an arrow comes from."""
    asked: list[Finding] = field(default_factory=list)

    def finding(self) -> Finding:
        """Draw a finding, one asked before for the most part."""
        seen = self.asked if self.asked and self.choices.chance(7) else self.findings
        return self.choices.one(seen)

    def target(self) -> str:
        """Draw where an arrow leads: to the next step, back, or some way on."""
        way = self.choices.number(0, 9)
        there = self.here + 1
        if way > 5:
            there = self.choices.number(0, self.here if self.tame else self.count - 1)
        elif way == 5:
            there = self.choices.number(self.here + 1, self.count - 1)
        if there <= self.here:
            self.back_from[there] = self.here
        return f"s{there}"


def libraries(*, tame: bool = True, most_pathways: int = 3) -> SearchStrategy[Library]:
    """Draw a library of one to three pathways; each hands over only to later ones."""
    drawn = st.binary(min_size=BYTES, max_size=BYTES)
    return drawn.map(lambda each: library_of(each, tame=tame, most_pathways=most_pathways))


def library_of(drawn: bytes, *, tame: bool = True, most_pathways: int = 3) -> Library:
    """Return the library that some bytes stand for."""
    choices = _Choices(drawn)
    shared = [_finding(choices, name) for name in "abc"[: choices.number(2, 3)]]
    shared.append(build.choice("d", "d1 d2", choices.one([None, "d1"])))
    acts = [
        Act(name, name, _effects(choices, shared), choices.chance(5)) for name in ("cut", "fill")
    ]
    pathways: list[Pathway] = []
    for place in reversed(range(choices.number(1, most_pathways))):
        own = [build.finding("a", "a1 a2 a3")] if choices.chance(2) else []
        seen = [each for each in shared if each.id not in {mine.id for mine in own}] + own
        drawing = _Drawing(choices, tame, f"p{place}", seen, acts, list(pathways))
        pathways.insert(0, _pathway(drawing, own))
    return build.library(*pathways, findings=shared, acts=acts)


def _finding(choices: _Choices, name: str) -> Finding:
    values = " ".join(f"{name}{number}" for number in range(1, choices.number(2, 3) + 1))
    values = "a1 a2 a3" if name == "a" else values
    return build.finding(name, values, restless=choices.chance(2))


def _effects(choices: _Choices, findings: list[Finding]) -> Effects:
    touched = {each.id: each for each in (choices.one(findings), choices.one(findings))}
    known, stale = [], []
    for each in list(touched.values())[: choices.one([2, 1, 0, 1, 2])]:
        if choices.chance(8):
            stale.append(each.id)
        else:
            known.append((each.id, _some_values(choices, each)))
    return Effects(tuple(known), tuple(stale))


def _some_values(choices: _Choices, finding: Finding) -> tuple[str, ...]:
    names = tuple(value.id for value in finding.values)
    return tuple(name for name in names if choices.chance(4)) or (choices.one(names),)


def _pathway(drawing: _Drawing, own: list[Finding]) -> Pathway:
    outcomes = drawing.choices.number(1, 2)
    busy = drawing.choices.number(2, 4) + (2 if drawing.name == "p0" else 0)
    drawing.count = busy + outcomes
    for place in range(busy):
        drawing.here = place
        drawing.steps.append(_step(drawing, f"s{place}"))
    drawing.steps += [build.end(f"s{busy + place}") for place in range(outcomes)]
    steps = [_bounded(drawing, place, step) for place, step in enumerate(drawing.steps)]
    return build.pathway(drawing.name, *steps, findings=own)


def _bounded(drawing: _Drawing, place: int, step: Step) -> Step:
    choices = drawing.choices
    least, last = place + 1, drawing.count - 1
    if drawing.tame:
        if place not in drawing.back_from:
            return step
        least = drawing.back_from[place] + 1
    elif isinstance(step, Outcome) or not choices.chance(5):
        return step
    else:
        least = choices.one([least, 0])
    return build.bounded(step, choices.number(1, 2), f"s{choices.number(least, last)}")


def _step(drawing: _Drawing, name: str) -> Step:
    match drawing.choices.one(KINDS):
        case "ask":
            return _question(drawing, name)
        case "branch" if drawing.asked or not drawing.tame:
            return _branch(drawing, name)
        case "hand over" if drawing.others:
            return _handover(drawing, name)
        case "branch":
            return _question(drawing, name)
        case _:
            return _action(drawing, name)


def _question(drawing: _Drawing, name: str) -> Question:
    asked = (
        drawing.choices.one(drawing.findings) if drawing.choices.chance(5) else drawing.finding()
    )
    drawing.asked.append(asked)
    values = [value.id for value in asked.values]
    if len(values) > 2 and drawing.choices.chance(3):
        together = values[:2] if drawing.choices.chance(5) else values[1:]
        groups = [tuple(together), *((each,) for each in values if each not in together)]
    else:
        groups = [(each,) for each in values]
    if not drawing.tame and drawing.choices.chance(3):
        groups.pop()
    elif drawing.choices.chance(1):
        groups = [tuple(values)]
    answers = [Answer("-or-".join(group), group, drawing.target()) for group in groups]
    if drawing.tame or drawing.choices.chance(9) or not answers:
        answers.append(Answer(CANNOT_TELL, (), drawing.target()))
    return Question(id=name, phase="only", ask=asked.id, question="?", answers=tuple(answers))


def _fresh(drawing: _Drawing) -> Finding:
    return drawing.choices.one(drawing.findings)


def _action(drawing: _Drawing, name: str) -> Action:
    acts = [drawing.choices.one(drawing.acts).id for _ in range(drawing.choices.number(0, 2))]
    return Action(
        id=name,
        phase="only",
        lines=tuple(Line("surgeon", "Act.", act=act) for act in acts),
        go_to=drawing.target(),
        effects=_effects(drawing.choices, drawing.asked or drawing.findings),
    )


def _branch(drawing: _Drawing, name: str) -> Branch:
    rows = [
        Row(Condition(_terms(drawing)), drawing.target())
        for _ in range(drawing.choices.one([1, 1, 2]))
    ]
    otherwise = drawing.target() if drawing.choices.chance(8) else None
    not_known = drawing.target() if drawing.choices.chance(8) else None
    return Branch(id=name, phase="only", rows=tuple(rows), otherwise=otherwise, not_known=not_known)


def _terms(drawing: _Drawing) -> tuple[tuple[str, tuple[str, ...]], ...]:
    named = {each.id: each for each in (drawing.finding(), drawing.finding())}
    if len(named) > 1 and drawing.choices.chance(7):
        named.popitem()
    return tuple((name, _some_values(drawing.choices, each)) for name, each in named.items())


def _handover(drawing: _Drawing, name: str) -> Handover:
    there = drawing.choices.one(drawing.others)
    outcomes = [step.id for step in there.steps.values() if isinstance(step, Outcome)]
    back = tuple((outcome, drawing.target()) for outcome in outcomes if drawing.choices.chance(8))
    return Handover(id=name, phase="only", to=there.id, says="Over.", on_return=back)


picks = st.lists(st.integers(0, 11), min_size=10, max_size=40)
"""Which of the moves offered is made, by turns; counted round where fewer are offered."""
