"""What stands after an edit is what is proved from scratch, whatever was covered before."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.model.library import Library
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.standing import Standing
from chamberwise.engine.proof.verdict import Holds
from chamberwise.engine.reading.library import load_library
from hypothesis import event, given, settings
from hypothesis import strategies as st

from tests.support.covering import covers_what_a_sweep_meets
from tests.support.rules import Ruled, ruled_libraries
from tests.support.thorough import THOROUGH

PROTOCOLS = Path(__file__).parents[2] / "protocols"
MOST = 50_000

any_ruled = ruled_libraries() | ruled_libraries(tame=False)
many = settings(max_examples=3000 if THOROUGH else 150, deadline=None)
edits = st.lists(st.integers(0, 10**6), min_size=1, max_size=4)


def edited(library: Library, first: Library, chosen: int) -> Library:
    """Return a library after one more edit, or, now and then, as it was at first."""
    pathway = sorted(library.pathways)[chosen % len(library.pathways)]
    made = list(mutants(library, pathway))
    if not made or chosen % 7 == 0:
        return first
    return made[chosen // 7 % len(made)].within(library)


@many
@given(any_ruled, edits)
def test_edit_after_edit(drawn: Ruled, edits: list[int]) -> None:
    standing, library = Standing(), drawn.library
    prove(library, drawn.entry, drawn.rules, most=MOST, standing=standing)
    for chosen in edits:
        library = edited(library, drawn.library, chosen)
        try:
            slow = prove(library, drawn.entry, drawn.rules, most=MOST)
        except KeyError:
            return  # an edit of an edit may name a step that is gone
        again = prove(library, drawn.entry, drawn.rules, most=MOST, standing=standing)
        event(f"fewer states: {again.states < slow.states}")
        assert again.verdicts == slow.verdicts
        for each in standing.kept:
            covers_what_a_sweep_meets(each)


@pytest.mark.parametrize("name", ["anterior-vitrectomy", "dropped-nucleus"])
def test_shipped_pathways(name: str) -> None:
    library = load_library(PROTOCOLS).library
    rules, standing = rules_for(library, name), Standing()
    prove(library, name, rules, standing=standing)
    made = list(mutants(library, name))
    fewer = 0
    for mutant in made[:: len(made) // (200 if THOROUGH else 6)]:
        changed = mutant.within(library)
        slow, again = prove(changed, name, rules), prove(changed, name, rules, standing=standing)
        assert again.verdicts == slow.verdicts
        fewer += again.states < slow.states / 2
    assert fewer
    assert any(isinstance(each, Holds) for each in slow.verdicts)
