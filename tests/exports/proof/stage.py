"""A library with rules broken on purpose, and walks over it that break them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from chamberwise.engine.meaning.state import Answered, Done, Move
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.verdict import Counterexample, Holds, Proof, Unproven, Violated
from chamberwise.engine.reading.library import Loaded, load_library

LIBRARY = Path(__file__).parent / "library"
PATHWAY = "leaking-wound"


@cache
def loaded() -> Loaded:
    return load_library(LIBRARY)


def rule(name: str) -> Rule:
    return next(each for each in rules_for(loaded().library, PATHWAY) if each.id == name)


def walked(typed: str) -> tuple[Move, ...]:
    """Return the moves of answers and `done` with commas between."""
    return tuple(Done() if word == "done" else Answered(word) for word in typed.split(", "))


def broken(name: str, typed: str, moment: int | None) -> Violated:
    return Violated(rule(name), Counterexample(PATHWAY, walked(typed), moment))


TO_THE_SUTURE = "slow, done, still-leaking, done, cannot tell, done"
NOT_TOLD = "fast, done, sore, done, done, sore"

PROOF = Proof(
    PATHWAY,
    1234,
    (
        Holds(rule("asked-before-hydrating")),
        broken("deep-before-suture", TO_THE_SUTURE, 5),
        broken("patient-is-told", NOT_TOLD, None),
        Holds(rule("air-after-looking"), is_vacuous=True),
        Unproven(rule("twice-at-most"), "there are more than 1,000 states"),
        broken("stay-in-the-wound", "fast, done, sore, done", 6),
        broken("no-suture-on-a-stale-look", TO_THE_SUTURE, 5),
        Holds(rule("air-before-water"), is_vacuous=True),
    ),
)
"""Every kind of verdict at once. The verdicts are given here and not proved."""


def replay(key: str) -> str:
    return f"chamberwise walk --replay {key}"
