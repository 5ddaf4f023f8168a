"""A question holds no negator: after "Is no vitreous left?" neither yes nor no can be trusted.

"Without" is let through: it names a thing ("a lens without capsule") and leaves yes and no alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.negation import negators
from chamberwise.engine.checks.wording.rule import Hit, TextKind, WordingRule
from chamberwise.engine.checks.wording.sentences import without_quotes
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _


def _find(text: str) -> Iterator[Hit]:
    for found in negators(without_quotes(text)):
        if found.group().lower() == "without":
            continue
        yield Hit(
            found.start(),
            found.end(),
            _('"{found}" in a question').format(found=found.group()),
            _('ask for what is seen, e.g. "Is vitreous at the wound?" or "What is at the wound?"'),
        )


RULE = WordingRule(
    slug="negated-question",
    title=N_("Negated question"),
    severity=Severity.ERROR,
    why=N_(
        'The answer "yes" then means "yes, none" to one person and "yes, some" to '
        "another, and the pathway goes on along the wrong branch."
    ),
    source=N_(
        "Just and Clark 1973 on negatives (secondary source read); questions: common practice"
    ),
    reads=frozenset({TextKind.QUESTION}),
    find=_find,
    wrong="Is there no vitreous in the anterior chamber?",
    right="Is vitreous in the anterior chamber?",
)
