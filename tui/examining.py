"""Checking and proving one pathway: what the checker screen shows, first one and then the other."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from chamberwise.engine.checks.before_proof import check_before_proof
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.reading.library import Loaded
from chamberwise.exports.proof.content import ProofShown
from chamberwise.exports.proof.extract import proof_shown
from chamberwise.tui.replaying import replay_command
from chamberwise.tui.walkable import problems_in_the_way


@dataclass(frozen=True, slots=True)
class Examined:
    """What was found so far; `why` says why there can be no proof, where there can be none."""

    problems: tuple[Problem, ...]
    why: str = ""
    before: tuple[Problem, ...] = ()
    """What makes walks endless or undecided."""
    proof: ProofShown | None = None

    @property
    def is_whole(self) -> bool:
        """Whether nothing is left to be done."""
        return self.proof is not None or bool(self.why)


def checked(loaded: Loaded, pathway: str, today: date) -> Examined:
    """Check a pathway's file."""
    file = loaded.file_of[pathway]
    problems = tuple(check_files(loaded, [file], today))
    return Examined(problems, problems_in_the_way(loaded, file, today))


def proved(loaded: Loaded, pathway: str, today: date, found: Examined) -> Examined:
    """Prove the rules of a pathway that can be walked. It may take a while."""
    before = tuple(check_before_proof(loaded, pathway, today))
    proof = prove(loaded.library, pathway)
    shown = proof_shown(loaded, proof, today, replay_command(loaded, pathway))
    return replace(found, before=before, proof=shown)
