"""A value that the finding does not have."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "no-such-value",
    Severity.ERROR,
    N_("A value the finding does not have"),
    N_("An answer or condition on a value that cannot be is never taken, and nobody would notice."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every value named of a finding that does not have it."""
    if not subject.definitions_are_whole:
        return
    for reference in subject.references:
        finding = subject.words.findings.get(reference.value_of or "")
        if finding is None or finding.value(reference.name):
            continue
        values = [value.id for value in finding.values]
        listed = ", ".join(f"`{value}`" for value in values)
        message = _("`{finding}` has no value `{name}`").format(
            finding=finding.id, name=reference.name
        )
        advice = did_you_mean(
            reference.name, values, _("Its values are {listed}.").format(listed=listed)
        )
        if reference.pointer[-1] == reference.name:
            advice += _(" An answer for several values needs `means:`.")
        at_key = reference.pointer[-1] == reference.name
        yield subject.problem(CODE, reference.pointer, message, advice, at_key=at_key)
