"""A pathway that calls itself approved and is not what was approved."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.approval.standing import NEVER_SEALED
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "edited-since-approval",
    Severity.ERROR,
    N_("Not what was approved"),
    N_("Nobody stands for what was edited since; it shows and prints as a draft."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when the content is not the one that the approval was given to.

    A file that could not be read whole is another content, and its own problems say why.
    """
    changed = subject.loaded.fallen.get(subject.pathway.id)
    if not changed or not subject.loaded.source(subject.pathway.id).is_whole:
        return
    if changed == (NEVER_SEALED,):
        message = _("the approval does not say which content it was given to")
        advice = _("Let it be approved with `chamberwise approve`, which writes that down.")
        yield subject.problem(CODE, ("status",), message, advice)
        return
    parts = ", ".join(f"`{each}`" for each in changed)
    message = _("changed since it was approved: {parts}").format(parts=parts)
    advice = _("Undo the edit, or set `status: draft` and let it be approved again.")
    yield subject.problem(CODE, ("approved content",), message, advice)
