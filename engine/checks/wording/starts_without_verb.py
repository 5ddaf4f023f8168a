"""An instruction begins with its verb, or with a condition, a comma and then the verb.

The verbs are those of the lexicon; a missing one is added there.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.clauses import act_start, leads_with_condition
from chamberwise.engine.checks.wording.rule import TO_BE_DONE, Hit, WordingRule
from chamberwise.engine.checks.wording.sentences import without_quotes
from chamberwise.engine.checks.wording.verbs import base_form
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_FIRST_WORD = re.compile(r"[^\W_][\w'’-]*+")


def _find(text: str) -> Iterator[Hit]:
    bare = without_quotes(text)
    word = _FIRST_WORD.search(bare)
    if word is None or act_start(bare, word.start()) is not None:
        return
    message = _('the instruction begins with "{word}", not with what is to be done').format(
        word=word.group()
    )
    yield Hit(word.start(), word.end(), message, _advice(bare, word))


def _advice(text: str, word: re.Match[str]) -> str:
    if leads_with_condition(text, word.start()):
        return _(
            'after the condition write a comma and then the verb: "If the wound leaks, suture it"'
        )
    verb = base_form(word.group())
    if verb:
        return _('write "{verb}" instead of "{word}"').format(
            verb=verb.capitalize(), word=word.group()
        )
    return _('begin with the verb, e.g. "Set ...", "Check ...", "Give ..."')


RULE = WordingRule(
    slug="starts-without-verb",
    title=N_("Instruction that does not begin with its verb"),
    severity=Severity.WARNING,
    why=N_(
        "A line without its verb in front reads as a description, so that nobody takes "
        "it up; a condition after the act is heard when the act is already done."
    ),
    source=N_("ASD-STE100, command form (secondary source read)"),
    reads=TO_BE_DONE,
    find=_find,
    wrong="The bottle is lowered to 40 cm.",
    right="If the chamber is shallow, raise the bottle to 60 cm.",
)
