"""What SPIN is given means what the rule means: on every walk up to a length, spread as it is."""

from __future__ import annotations

import pytest
from chamberwise.engine.patterns.formula import holds

from tests.engine.patterns.every import KINDS, Kind, Letter, formula, letters, machine, named, words
from tests.engine.patterns.parsing import formula_in
from tests.spin.formulas import SAVING, is_kept_apart, ltl

LONGEST = {1: 6, 2: 4, 3: 3, 4: 2}
NOTHING: Letter = frozenset()
every_kind = pytest.mark.parametrize("kind", KINDS, ids=named)


def spread(word: tuple[Letter, ...], kind: Kind) -> list[Letter]:
    """Return the states of SPIN on a walk: one before it, the moments, and those after its end."""
    states = [NOTHING]
    for letter in word:
        states.append(letter | {"seen"})
        if is_kept_apart(kind):
            states.append(NOTHING)
    return [*states, NOTHING, NOTHING]


@every_kind
def test_spin_is_given_what_the_rule_means(kind: Kind) -> None:
    given = formula_in(ltl(kind).replace("&&", "&").replace("||", "|"))
    atoms = machine(kind).atoms
    differ = [
        word
        for word in words(atoms, LONGEST[len(atoms)])
        if holds(given, spread(word, kind)) is not holds(formula(kind), word)
    ]
    assert differ == []


@every_kind
def test_one_more_moment_saves_what_can_be_saved(kind: Kind) -> None:
    """So that SPIN can judge a walk after which the operation goes on elsewhere."""
    watched = machine(kind)
    shown = frozenset(SAVING.get(kind[:2], ""))
    letter = letters(watched.atoms).index(shown)
    for state, row in enumerate(watched.after):
        if SAVING.get(kind[:2]) is None:
            assert state in watched.good or state == watched.lost
        else:
            assert row[letter] in watched.good or state == watched.lost
