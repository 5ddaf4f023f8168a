"""A proof of the source, told with the rules as another language says them."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.model.library import Library
from chamberwise.engine.proof.verdict import Proof


def retold_proof(proof: Proof, library: Library) -> Proof:
    """Return the same verdicts, each with its rule in the words of a library."""
    rules = library.words(proof.pathway).rules
    said = (replace(each, rule=rules.get(each.rule.id, each.rule)) for each in proof.verdicts)
    return replace(proof, verdicts=tuple(said))
