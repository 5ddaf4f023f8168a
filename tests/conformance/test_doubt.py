"""A team that cannot tell, at every question there is: what is then left undone."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

import pytest
from chamberwise.engine.meaning.advance import offered
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import CANNOT_TELL, Question

from tests.conformance.acts import CUT, NUCLEUS, PLACE_LENS
from tests.conformance.driver import GOOD, Walk, library, walk_by
from tests.conformance.situation import Situation
from tests.conformance.situations import SITUATIONS

LENSES = frozenset({*PLACE_LENS, "open-lens", "capture-optic"})
NUCLEUS_AND_LENSES = LENSES | {*NUCLEUS, *CUT}

UNDONE: Mapping[str, frozenset[str]] = {
    "suprachoroidal": NUCLEUS_AND_LENSES | {"enlarge-main-wound", "levitate-piece"},
    "cornea": LENSES | {"phaco-fragment", "levitate-piece"},
    "comfort": LENSES | {"levitate-piece"},
    "lidocaine-total": frozenset({"top-up-block"}),
    "nucleus-behind": LENSES | {"levitate-piece", "phaco-fragment"},
    "nucleus-front": frozenset({"phaco-fragment", "remove-soft-pieces-with-cutter"}),
    "fall": LENSES | {"levitate-piece", "phaco-fragment"},
    "cortex": frozenset({"aspirate-cortex"}),
    "tear": frozenset({"aspirate-cortex"}),
    "vitreous-lost": frozenset({"phaco-fragment"}),
    "capsule-support": LENSES,
    "posterior-opening": frozenset({"place-lens-in-bag"}),
    "three-piece-stock": LENSES | {"remove-lens"},
    "scaffold-conditions": frozenset({"place-scaffold-lens"}),
    "trained-fixation": LENSES,
    "eye-for-chamber-lens": LENSES,
    "lens-without-capsule": LENSES,
    "trained-levitation": frozenset({"levitate-piece"}),
    "trained-pars-plana": frozenset({"enter-through-pars-plana"}),
    "cutter": frozenset(CUT),
    "lens-agreed": LENSES,
    "lens-hold": frozenset({"inject-miotic", "remove-lens", "turn-lens"}),
    "left-behind": frozenset({"inject-miotic"}),
    "fallen-piece": frozenset({"inject-miotic"}),
    "antibiotic-allergy": frozenset({"inject-cefuroxime"}),
    "acetazolamide-risks": frozenset({"give-acetazolamide"}),
}
"""By the finding in doubt, the acts that do not follow while the doubt stays."""

SETTLED = {
    "tip": "the tip is held still as if it were in the eye",
    "stage": "the eye is looked at for a lens",
    "lens": "the lens is counted as loose, or looked at again",
    "lens-type": "a lens that is not held comes out, whatever it is",
    "front-opening": "a lens asks for what can be seen, else none goes in",
    "vitreous": "stain settles it or the vitrectomy stops; the rules watch every act",
    "main-wound": "the wound is sutured",
    "wounds": "the wound gets another suture, and in the end the senior surgeon",
    "vitreoretinal-surgeon": "the call is made as if the operation came later",
    "defect-risk": "the plan is that for a polar cataract",
    "power-fit": "the lens is exchanged",
}
"""Findings whose doubt bars no single act, and what is done instead."""

QUESTIONS = tuple(
    Place(pathway.id, step.id)
    for pathway in library().pathways.values()
    for step in pathway.steps.values()
    if isinstance(step, Question)
)


@lru_cache(maxsize=1)
def ways_there() -> Mapping[Place, Situation]:
    """Return, for every question, a situation in which it is asked."""
    ways: dict[Place, Situation] = {}
    for situation in SITUATIONS:
        for place in situation.walk().steps:
            ways.setdefault(place, situation)
    return ways


def in_doubt(question: Place) -> tuple[Walk, int]:
    """Return the walk that cannot tell, from that question on, and where the doubt begins."""
    situation = ways_there()[question]
    script = {**GOOD, **situation.found}
    asked, times = library().step(question), dict[str, int]()
    assert isinstance(asked, Question)
    begun: list[bool] = []

    def choose(state: State, step: Question) -> str:
        if state.place == question:
            begun.append(True)
        if begun and step.ask == asked.ask:
            return CANNOT_TELL
        name = step.id if step.id in script else step.ask
        values = script[name].split(", ")
        times[name] = times.get(name, 0) + 1
        value = values[min(times[name], len(values)) - 1]
        means = {each for answer in offered(library(), state, step) for each in answer.means}
        return value if value in means or value == CANNOT_TELL else CANNOT_TELL

    walked = walk_by(library(), situation.entry, choose)
    asking = walked.trace.where("asked", asked.ask)
    doubts = [at for at in asking if walked.events[at].answer == CANNOT_TELL]
    return walked, next(at for at in doubts if walked.events[at].step == question.step)


@pytest.mark.parametrize("question", QUESTIONS, ids=": ".join)
def test_what_a_doubt_bars_is_left_undone(question: Place) -> None:
    walked, since = in_doubt(question)
    asked = library().step(question)
    assert isinstance(asked, Question)
    later = {event.name for event in walked.events[since:] if event.kind == "did"}
    assert not later & UNDONE.get(asked.ask, frozenset())


def test_every_finding_asked_bars_something_or_is_said_to_be_settled() -> None:
    asked = {step.ask for place in QUESTIONS if isinstance(step := library().step(place), Question)}
    assert asked == {*UNDONE, *SETTLED}
