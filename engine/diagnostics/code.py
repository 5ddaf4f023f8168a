"""The kinds of problem: each has one slug, declared once beside the check that finds it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.diagnostics.problem import Note, Pointer, Problem, Severity, Span
from chamberwise.engine.language.texts import gettext as _


@dataclass(frozen=True, slots=True)
class Code:
    """A kind of problem: its slug, one line on what it is, and why it matters to a team.

    Title and why are marked with `N_` where a code is declared, and told where they are shown.
    """

    slug: str
    severity: Severity
    title: str
    why: str

    def at(
        self,
        file: str,
        pointer: Pointer,
        span: Span | None,
        message: str,
        advice: str,
        notes: Sequence[Note] = (),
    ) -> Problem:
        """Return a problem of this kind at one place."""
        return Problem(
            self.slug,
            self.severity,
            file,
            pointer,
            span,
            message,
            _(self.why),
            advice,
            tuple(notes),
        )
