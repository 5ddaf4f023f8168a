"""SPIN and the proof give the same verdicts, each by its own reading of pathway and rule.

A few dozen random pathways and one that ships by default, all of them with
CHAMBERWISE_TESTS=thorough. Without spin or gcc the tests are skipped, unless
CHAMBERWISE_SPIN=required.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path
from random import Random

import pytest
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.verdict import Holds, Unproven
from chamberwise.engine.reading.library import load_library

from tests.engine.patterns.every import KINDS
from tests.engine.proof.test_worked_example import BROKEN, RULES, example
from tests.spin.formulas import kind_of
from tests.spin.running import EVERY_WALK_ENDS, Size, Verifier, build, have_spin, size_of
from tests.spin.writing import Table
from tests.support.rules import RULE_BYTES, Ruled, ruled
from tests.support.strategies import BYTES

THOROUGH = os.environ.get("CHAMBERWISE_TESTS") == "thorough"
PATHWAYS, RULES_EACH = (1000 if THOROUGH else 50), 3
PROTOCOLS = Path(__file__).parents[2] / "protocols"

thoroughly = pytest.mark.skipif(not THOROUGH, reason="minutes; with CHAMBERWISE_TESTS=thorough")


@pytest.fixture(scope="module")
def verifier(tmp_path_factory: pytest.TempPathFactory) -> Verifier:
    """Return one that has room for every small pathway and every kind of rule."""
    have_spin()
    return build(tmp_path_factory.mktemp("spin"), Size(findings=12, bounds=24, depth=4), KINDS)


def random_pathways() -> list[Ruled]:
    random = Random(20261125)

    def drawn(count: int) -> bytes:
        return bytes(random.randrange(256) for _ in range(count))

    return [
        ruled(drawn(BYTES), drawn(RULE_BYTES), [drawn(RULE_BYTES) for _ in range(RULES_EACH)])
        for _ in range(PATHWAYS)
    ]


def differences(
    verifier: Verifier, library: Library, entry: str, rules: Sequence[Rule], hash_bits: int = 16
) -> list[str]:
    """Return the rules on which the two do not agree; none may be left open."""
    verdicts = prove(library, entry, rules).verdicts
    assert not any(isinstance(each, Unproven) for each in verdicts)
    return [
        f"{each.rule.id} of {entry}"
        for each in verdicts
        if isinstance(each, Holds)
        is not verifier.judge(library, entry, each.rule, hash_bits=hash_bits).holds
    ]


def test_on_random_pathways_they_agree(verifier: Verifier) -> None:
    found = [
        difference
        for each in random_pathways()
        for difference in differences(verifier, each.library, each.entry, each.rules)
    ]
    assert found == []


def test_the_random_rules_are_neither_all_kept_nor_all_broken() -> None:
    kept = [
        isinstance(verdict, Holds)
        for each in random_pathways()
        for verdict in prove(each.library, each.entry, each.rules).verdicts
    ]
    assert len(kept) == PATHWAYS * RULES_EACH
    assert len(kept) // 5 < sum(kept) < len(kept) * 4 // 5


def test_on_random_pathways_every_walk_ends(verifier: Verifier) -> None:
    for each in random_pathways():
        rule = each.rules[0]
        assert verifier.judge(each.library, each.entry, rule, claim=EVERY_WALK_ENDS).holds


@pytest.mark.parametrize("name", RULES)
def test_spin_gives_the_published_verdicts(verifier: Verifier, name: str) -> None:
    assert verifier.judge(example(), "example", RULES[name]).holds is (name not in BROKEN)


def test_spin_sees_what_the_proof_would_miss(verifier: Verifier) -> None:
    """The comparison is no formality: another pathway's verdicts do not fit."""
    shortcut = example(after_extraction="s5")
    assert not verifier.judge(shortcut, "example", RULES["R9"]).holds


SHIPPED = [
    pytest.param("anterior-vitrectomy", 1, 16, id="anterior-vitrectomy"),
    pytest.param("closing-and-after-care", 1, 20, id="closing", marks=thoroughly),
    pytest.param("dropped-nucleus", 12, 23, id="dropped-nucleus", marks=thoroughly),
]
"""A pathway, each so manieth rule is tried, and the size of SPIN's table of states.

The largest pathway takes SPIN two minutes and gigabytes for every rule, and is left out.
"""


@pytest.mark.parametrize(("name", "each", "hash_bits"), SHIPPED)
def test_on_shipped_pathways_they_agree(
    tmp_path: Path, name: str, each: int, hash_bits: int
) -> None:
    have_spin()
    library = load_library(PROTOCOLS).library
    rules = rules_for(library, name)[::each]
    assert rules
    built = build(
        tmp_path, size_of(Table(library, name, rules[0])), map(kind_of, rules), optimise="-O1"
    )
    assert built.judge(library, name, rules[0], claim=EVERY_WALK_ENDS, hash_bits=hash_bits).holds
    assert differences(built, library, name, rules, hash_bits) == []
