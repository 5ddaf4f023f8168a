"""Which operations of a sheet break a safety rule that holds without them."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from functools import cache

from chamberwise.engine.checks.run import check_for_walk
from chamberwise.engine.local.causes import Kept, causes, with_only
from chamberwise.engine.model.rule import Rule, RuleId
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.verdict import Proof, Violated
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.local_sheet import Operation


def broken_by(base: Loaded, sheet: File, proof: Proof) -> Mapping[RuleId, tuple[Operation, ...]]:
    """Return the operations that break each broken rule of a proof under a sheet.

    A rule that is broken below the sheet already is left out: nothing of the sheet does it.
    """
    rules = tuple(each.rule for each in proof.verdicts if isinstance(each, Violated))
    if sheet.sheet is None or not rules:
        return {}

    @cache
    def broken(kept: Kept) -> frozenset[RuleId]:
        loaded = with_only(base, sheet, kept) if kept else base
        return _broken(loaded, proof.pathway, rules) if loaded else frozenset()

    found = {rule.id: causes(sheet.sheet, rule.id, broken) for rule in rules}
    return {rule: operations for rule, operations in found.items() if operations}


def _broken(loaded: Loaded, pathway: PathwayId, rules: tuple[Rule, ...]) -> frozenset[RuleId]:
    """Return which rules that bind there a walk breaks; of what cannot be walked nothing."""
    if check_for_walk(loaded, pathway, date.min):
        return frozenset()
    binding = rules_for(loaded.library, pathway)
    asked = tuple(rule for rule in rules if rule in binding)
    verdicts = prove(loaded.library, pathway, asked).verdicts
    return frozenset(each.rule.id for each in verdicts if isinstance(each, Violated))
