"""The report of a proof as text and as plain values, kept to be read."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from chamberwise.engine.mutants.strength import OfKind, Strength, Survivor
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Proof, Violated
from chamberwise.exports.proof.content import ProofShown, VerdictWord
from chamberwise.exports.proof.extract import proof_shown
from chamberwise.exports.proof.machine import values
from chamberwise.exports.proof.strength import strength_text, strength_values
from chamberwise.exports.proof.text import proof_text, what_it_means

from tests.exports.proof.stage import PATHWAY, PROOF, loaded, replay
from tests.tui.golden import assert_as_kept

KEPT = Path(__file__).parent / "kept"
TODAY = date(2026, 11, 25)
STRENGTH = Strength(
    PATHWAY,
    2000,
    (OfKind("drop a step", 40, 40), OfKind("swap two steps", 60, 58), OfKind("none of it", 0, 0)),
    {"patient-is-told": 70, "unreachable-step": 28},
    (
        Survivor("swap/a/b", "swap two steps", "Swap `a` and `b`.", "Both are said at once."),
        Survivor("swap/c/d", "swap two steps", "Swap `c` and `d`.", None),
    ),
    ("drop/e",),
)


def shown(proof: Proof = PROOF) -> ProofShown:
    return proof_shown(loaded(), proof, TODAY, replay)


def test_the_report_reads_so() -> None:
    assert_as_kept(KEPT / "report.txt", f"{proof_text(shown())}\n\n{what_it_means()}\n")


def test_the_report_of_everything_names_every_rule() -> None:
    text = proof_text(shown(), everything=True)
    assert [rule.id for rule in shown().rules if f"`{rule.id}`" not in text] == []
    assert_as_kept(KEPT / "report-all-end.txt", text[text.index("HOLDS:") :] + "\n")


def test_the_values_read_so() -> None:
    text = json.dumps(values([shown()]), indent=2, ensure_ascii=False) + "\n"
    assert_as_kept(KEPT / "report.json", text)


def test_no_line_but_the_command_is_wider_than_78_columns() -> None:
    wide = [line for line in proof_text(shown(), everything=True).splitlines() if len(line) > 78]
    assert [line for line in wide if not line.startswith("  Replay:")] == []


def test_the_broken_come_first_and_of_those_the_worst_harm() -> None:
    assert [(str(each.verdict), each.severity, each.is_house_rule) for each in shown().rules] == [
        ("broken", "serious", True),
        ("broken", "serious", True),
        ("broken", "minor", False),
        ("broken", "negligible", False),
        ("unproven", "minor", False),
        ("does not arise", "serious", False),
        ("holds", "minor", True),
        ("does not arise", "critical", True),
    ]


def test_only_a_rule_of_the_pathway_itself_has_to_arise() -> None:
    idle = {each.id: each.is_finding for each in shown().of(VerdictWord.DOES_NOT_ARISE)}
    assert idle == {"air-after-looking": False, "air-before-water": True}


@pytest.mark.parametrize(
    ("states", "rules", "said"),
    [
        (1, 0, "1 state. No rule binds it."),
        (1234, 1, "1,234 states, 1 rule: 1 holds."),
        (0, 2, "0 states, 2 rules: 1 is broken, 1 holds."),
    ],
)
def test_counts_are_told_in_good_english(states: int, rules: int, said: str) -> None:
    proof = replace(PROOF, states=states, verdicts=PROOF.verdicts[:rules])
    assert said in proof_text(shown(proof)).splitlines()


def test_the_walks_given_on_the_stage_are_what_the_proof_finds() -> None:
    proved = {each.rule.id: each for each in prove(loaded().library, PATHWAY).verdicts}
    for given in PROOF.verdicts:
        if isinstance(given, Violated):
            found = proved[given.rule.id]
            assert isinstance(found, Violated)
            assert len(found.counterexample.moves) == len(given.counterexample.moves)
            assert found.counterexample.moment == given.counterexample.moment


def test_how_strong_the_rules_are_reads_so() -> None:
    assert_as_kept(KEPT / "strength.txt", strength_text(STRENGTH, every=20) + "\n")


def test_the_strength_as_values_keeps_what_is_on_no_list() -> None:
    told = json.loads(json.dumps(strength_values(STRENGTH)))
    assert [each["id"] for each in told["survivors"] if each["reason"] is None] == ["swap/c/d"]
    assert (told["clean"], told["stale"], told["by"]["patient-is-told"]) == (False, ["drop/e"], 70)
