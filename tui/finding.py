"""What is found of a file while it is written: first what is seen at once, then checks, then proof.

What was found of the save before stands again only where all that it hangs on is equal: verdicts
by rule and bare library, looks at walks by bare library, texts and names by their own value.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from time import monotonic

from chamberwise.engine.checks.before_proof import check_before_proof
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.checks.subjects import Subjects
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.local.blaming import Below, below_again, blamed
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.proof.kept import Kept
from chamberwise.engine.proof.rules import rules_for
from chamberwise.engine.proof.verdict import Proof, Verdict
from chamberwise.engine.reading.library import Loaded
from chamberwise.exports.proof.extract import proof_shown, proof_under_way
from chamberwise.tui.drafting import Draft
from chamberwise.tui.examining import Examined
from chamberwise.tui.replaying import replay_command
from chamberwise.tui.walkable import problems_in_the_way

SECONDS_BETWEEN_WORDS = 0.4
"""How long a proof goes on before it is told again how far it is."""


@dataclass(slots=True)
class Finder:
    """What stands of the saves before."""

    today: date
    kept: Kept = field(default_factory=Kept)
    _subjects: Subjects | None = None
    _below: Below | None = None

    def at_once(self, draft: Draft) -> Examined:
        """Return what is seen without looking at walks; more may come, and nothing goes."""
        return Examined(self._problems(draft, walking=False))

    def whole(self, draft: Draft) -> Examined:
        """Return what every check finds, and why there can be no proof, where there can be none."""
        problems = self._problems(draft, walking=True)
        source = draft.source or draft.file
        why = problems_in_the_way(
            draft.loaded, source.shown_as, self.today, subjects=self._of(draft.loaded)
        )
        return Examined(problems, why)

    def proof(
        self, draft: Draft, found: Examined, tell: Callable[[Examined], None] | None = None
    ) -> Examined:
        """Prove what can be walked; it may take a while. `tell` is told how far it has come."""
        pathway = draft.pathway
        if pathway is None or found.why:
            return found
        loaded, today = draft.loaded, self.today
        before = tuple(check_before_proof(loaded, pathway.id, today))
        replay = replay_command(loaded, pathway.id)
        last = float("-inf")

        def say(settled: Mapping[Rule, Verdict]) -> None:
            nonlocal last
            if tell is not None and monotonic() - last >= SECONDS_BETWEEN_WORDS:
                still = [
                    each for each in rules_for(loaded.library, pathway.id) if each not in settled
                ]
                so_far = Proof(pathway.id, 0, tuple(settled.values()))
                shown = proof_under_way(loaded, so_far, still, today, replay)
                tell(replace(found, before=before, proof=shown))
                last = monotonic()

        proof = self.kept.proof(loaded.library, pathway.id, say)
        shown = proof_shown(loaded, proof, today, replay)
        return replace(found, before=before, proof=shown)

    def _problems(self, draft: Draft, *, walking: bool) -> tuple[Problem, ...]:
        source = draft.source
        names = dict.fromkeys((draft.shown_as, *([source.shown_as] if source else ())))
        subjects = self._of(draft.loaded)
        problems = check_files(draft.loaded, names, self.today, subjects, walking=walking)
        if walking and draft.base is not None and draft.sheet is not None and source is not None:
            self._below = below_again(self._below, draft.base, (source.shown_as,), self.today)
            problems = blamed(problems, draft.sheet, self._below)
        return _gravest_first(problems)

    def _of(self, loaded: Loaded) -> Subjects:
        if self._subjects is None or self._subjects.loaded is not loaded:
            self._subjects = Subjects(loaded, self.today)
        return self._subjects


def _gravest_first(problems: list[Problem]) -> tuple[Problem, ...]:
    kinds = tuple(Severity)

    def rank(problem: Problem) -> tuple[int, int, int]:
        span = problem.span
        line, column = (span.line, span.column) if span else (0, 0)
        return kinds.index(problem.severity), line, column

    return tuple(sorted(dict.fromkeys(problems), key=rank))
