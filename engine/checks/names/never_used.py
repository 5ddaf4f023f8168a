"""A word that this file defines and nothing in it uses."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.references import Of
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "never-used",
    Severity.WARNING,
    N_("A word defined and never used"),
    N_("It is either left over, or the step that should use it names something else."),
)

TABLES = (
    ("acts", (Of.ACT,)),
    ("duties", (Of.DUTY,)),
    ("kit", (Of.KIT,)),
    ("sources", (Of.SOURCE,)),
    ("phases", (Of.PHASE,)),
    ("findings", (Of.FINDING,)),
    ("choices", (Of.CHOICE, Of.FINDING)),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every own act, duty, kit item, source, phase or finding never used."""
    if not subject.loaded.source(subject.pathway.id).rules_are_whole:
        return
    used = {
        (reference.of, reference.name)
        for reference in subject.references
        if reference.value_of is None
    }
    for table, kinds in TABLES:
        entry = getattr(subject.tree.root, "entries", {}).get(table)
        for name in getattr(entry.value, "entries", {}) if entry else ():
            if not any((kind, name) in used for kind in kinds):
                message = _("`{name}` is defined under `{table}` and never used").format(
                    name=name, table=table
                )
                advice = _("Delete it, or use it in the step it was meant for.")
                yield subject.problem(CODE, (table, name), message, advice, at_key=True)
