"""Proving once more after an edit: what still stands first, then a short look for what fell."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.proof.closer import Closer
from chamberwise.engine.proof.counterexample import counterexample
from chamberwise.engine.proof.covered import Claim, covered
from chamberwise.engine.proof.run import run
from chamberwise.engine.proof.standing import MOST_STATES, Standing
from chamberwise.engine.proof.sweep import Sweep
from chamberwise.engine.proof.verdict import Violated

A_SHORT_LOOK = 20_000
"""How many states are looked at, shorter walks first, before a fallen rule is judged anew."""


def begin_with_what_stands(
    standing: Standing, closer: Closer, library: Library, rules: Sequence[Rule]
) -> dict[Rule, Violated]:
    """Let a closer know what it need not judge; return the rules that broke at once.

    From then on what it proves is remembered.
    """
    claims: list[Claim] = [(rules[each.rule], each.is_trigger) for each in closer.claims]

    def keep(sweep: Sweep, numbers: Sequence[int], holding: frozenset[int]) -> None:
        if sweep.found.states <= MOST_STATES:
            standing.keep(covered(sweep, [claims[number] for number in numbers], holding))

    stands = standing.claims(closer.ground, reduced=closer.reduced)
    closer.proved.update(number for number, claim in enumerate(claims) if claim in stands)
    closer.keep = keep
    if not stands:
        return {}
    fallen = [rule for rule in rules if (rule, False) not in stands]
    broke = _broke_soon(closer, library, fallen)
    closer.told.update(at for at, (rule, _) in enumerate(claims) if rule in broke)
    return broke


def _broke_soon(closer: Closer, library: Library, rules: Sequence[Rule]) -> dict[Rule, Violated]:
    if not rules:
        return {}
    entry, reduced = closer.ground.entry, closer.reduced
    look = run(library, entry, rules, A_SHORT_LOOK, stop_at_first=False, reduced=reduced)
    closer.states += look.found.states
    return {
        rule: Violated(rule, counterexample(library, look, at, rule))
        for at, rule in enumerate(rules)
        if look.breaks(at)
    }
