"""Proofs as plain values for programs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.proof.content import FINAL, ProofShown, RuleShown, Story
from chamberwise.exports.proof.text import MEANS
from chamberwise.exports.record.standing import STANDING

FORMAT = 1


def values(
    proofs: Sequence[ProofShown],
    problems: Sequence[dict[str, object]] = (),
    strength: Sequence[dict[str, Any]] | None = None,
) -> dict[str, Any]:
    """Return one mapping: what stands in the way of every proof, then a mapping a pathway."""
    told: dict[str, Any] = {
        "format": FORMAT,
        "standing": _(STANDING),
        "means": _(MEANS),
        "problems": list(problems),
        "pathways": [_proof(each) for each in proofs],
    }
    return told if strength is None else told | {"mutants": list(strength)}


def _proof(proof: ProofShown) -> dict[str, Any]:
    return {
        "pathway": proof.pathway,
        "title": proof.title,
        "edition": proof.edition,
        "marks": list(proof.marks),
        "states": proof.states,
        "counts": {str(each): len(proof.of(each)) for each in FINAL},
        "rules": [_rule(each) for each in proof.rules],
        "switched off": list(proof.switched_off),
    }


def _rule(rule: RuleShown) -> dict[str, Any]:
    return {
        "rule": rule.id,
        "title": rule.title,
        "binds": rule.binds,
        "verdict": str(rule.verdict),
        "reason": rule.reason,
        "meaning": rule.meaning,
        "lists": list(rule.lists),
        "harm": rule.harm,
        "severity": rule.severity,
        "instead": rule.instead,
        "sources": [asdict(each) for each in rule.sources],
        "file": rule.file,
        "line": rule.line,
        "column": rule.column,
        "brought by": list(rule.brought_by),
        "counterexample": _story(rule.story) if rule.story else None,
    }


def _story(story: Story) -> dict[str, Any]:
    told = asdict(story)
    for step in told["steps"]:
        step["kind"] = str(step["kind"])
    return told
