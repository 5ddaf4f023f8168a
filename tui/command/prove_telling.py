"""Telling a proof: as text while it goes on, or as JSON once it is done."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Protocol

from chamberwise.engine.diagnostics.machine import problem_values
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.mutants.strength import Strength
from chamberwise.exports.proof.content import ProofShown
from chamberwise.exports.proof.machine import values
from chamberwise.exports.proof.strength import strength_text, strength_values
from chamberwise.exports.proof.text import proof_text, what_it_means
from chamberwise.tui.command.output import product, product_json


class Teller(Protocol):
    """Takes what is found as it is found, and hands it back."""

    def problems(self, found: Sequence[Problem]) -> None:
        """Take what stands before any rule."""

    def proof(self, found: ProofShown) -> ProofShown:
        """Take the proof of one pathway."""

    def strength(self, found: Strength) -> Strength:
        """Take the measure of one pathway."""

    def end(self) -> None:
        """Close what was told."""


@dataclass
class InText:
    """Tells each thing at once, so that a long proof is read while it goes on."""

    texts: Mapping[str, str]
    everything: bool
    every: int

    def problems(self, found: Sequence[Problem]) -> None:
        """Tell every problem with its line."""
        for problem in found:
            product(problem_text(problem, self.texts) + "\n")

    def proof(self, found: ProofShown) -> ProofShown:
        """Tell one pathway."""
        product(proof_text(found, everything=self.everything) + "\n")
        return found

    def strength(self, found: Strength) -> Strength:
        """Tell one measure."""
        product(strength_text(found, every=self.every) + "\n")
        return found

    def end(self) -> None:
        """Say what a proof means and what it does not."""
        product(what_it_means())


@dataclass
class InJson:
    """Keeps everything and tells it as one value."""

    with_mutants: bool
    found: list[Problem] = field(default_factory=list)
    proofs: list[ProofShown] = field(default_factory=list)
    strengths: list[dict[str, Any]] = field(default_factory=list)

    def problems(self, found: Sequence[Problem]) -> None:
        """Keep the problems."""
        self.found += found

    def proof(self, found: ProofShown) -> ProofShown:
        """Keep a proof."""
        self.proofs.append(found)
        return found

    def strength(self, found: Strength) -> Strength:
        """Keep a measure."""
        self.strengths.append(strength_values(found))
        return found

    def end(self) -> None:
        """Tell it all."""
        strengths = self.strengths if self.with_mutants else None
        product_json(values(self.proofs, problem_values(self.found), strengths))
