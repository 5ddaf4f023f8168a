"""Words that leave open whether an act is done, how fast, or how its success is told.

Read only where something is to be done: "may" and "slowly" are sound words in a reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.lexicon import open_phrase, unsettled
from chamberwise.engine.checks.wording.rule import TO_BE_DONE, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_

_TOLD = r"\b(?:tell|warn|explain|inform|say|advise|remind|ask|discuss|record|write|note|agree)\b"
_PACE = (
    r"\b(?:until|without|within|over|every|no\sfaster|just\senough|so\sthat|ask|tell)\b"
    r"|[0-9]\s?(?:s|min|mL|ml|mmHg|mm)\b"
)

_PHRASES = (
    open_phrase(
        r"should|ought\sto", N_("whether it must be done"), N_("write the verb as a command"), _TOLD
    ),
    open_phrase(
        r"(?<![0-9]\s)(?-i:may|MAY)(?!\s[0-9])|could",
        N_("whether it is done at all"),
        N_(
            'write the verb as a command, or say on what it depends: "If the wound leaks, '
            'suture it"'
        ),
        _TOLD,
    ),
    open_phrase(
        "consider",
        N_("who decides, and by what"),
        N_('give the criterion, e.g. "If the wound leaks, suture it"'),
        r"\b(?:if|when|where|unless|once|in\s(?:eyes|patients))\b",
    ),
    open_phrase(
        r"ensure|make\ssure",
        N_("what is to be done"),
        N_('write the act itself, e.g. "Check that the wound is dry"'),
    ),
    open_phrase(
        "verify",
        N_("how it is verified"),
        N_('name the test, e.g. "Read the power aloud from the box"'),
        r"\b(?:by|with|against|using|from|aloud)\b",
    ),
    open_phrase(
        r"(?<![a-z]\s)(?<![a-z-])monitor|(?<=(?:and|hen)\s)monitor(?=\s(?:the|his|her|their|for)\b)",
        N_("what is watched and how often"),
        N_('say what and how often, e.g. "Read the blood pressure aloud every 5 min"'),
        r"\b(?:every|each|continuously|until|throughout)\b",
    ),
    open_phrase(
        r"slowly|gently",
        N_("the speed or the force"),
        N_('give the rate or the sign, e.g. "over 10 s"'),
        _PACE,
    ),
    open_phrase(
        r"immediately(?!\s(?:after|before|when|once|behind|below|under|above|beneath|in\sfront|next))",
        N_("by when"),
        N_('give the limit, e.g. "within 10 s", or the step it comes before'),
        _PACE,
    ),
)


def _find(text: str) -> Iterator[Hit]:
    yield from unsettled(text, _PHRASES)


RULE = WordingRule(
    slug="act-left-open",
    title=N_("Act left open"),
    severity=Severity.WARNING,
    why=N_(
        "Whoever reads it decides alone whether, how fast or how well, in the moment "
        "that leaves least time to decide; one does it at once, another not at all."
    ),
    source=N_("procedure writers' guides (from memory); common practice"),
    reads=TO_BE_DONE,
    find=_find,
    wrong="Consider a suture in the main wound.",
    right="If the main wound leaks, suture it.",
)
