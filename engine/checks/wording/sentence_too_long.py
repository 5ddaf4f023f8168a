"""A sentence of a caution or a reason keeps to the limit for descriptive text.

What is done, said or asked has the stricter limit of `too_many_words`.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import Hit, TextKind, WordingRule
from chamberwise.engine.checks.wording.sentences import sentences, words
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_MOST = 25


def _find(text: str) -> Iterator[Hit]:
    for start, end in sentences(text):
        counted = words(text, start, end)
        if len(counted) > _MOST:
            yield Hit(
                counted[_MOST][0],
                counted[-1][1],
                _("a sentence of {count} words; at most {most}").format(
                    count=len(counted), most=_MOST
                ),
                _("make two sentences of it, or take out {over} of its words").format(
                    over=len(counted) - _MOST
                ),
            )


RULE = WordingRule(
    slug="sentence-too-long",
    title=N_("Sentence too long"),
    severity=Severity.ERROR,
    why=N_(
        "A caution that must be read twice is not read in time, and the harm it names comes first."
    ),
    source=N_("ASD-STE100 limit of 25 words for a descriptive sentence (secondary source read)"),
    reads=frozenset({TextKind.CAUTION, TextKind.REASON}),
    find=_find,
    wrong=(
        "When the tip leaves the eye before the chamber has been filled, the pressure in front of"
        " the tear falls at once and the vitreous is driven forwards into the wound."
    ),
    right=(
        "When the tip leaves before the chamber is full, the pressure in front of the tear falls."
        " Vitreous is then driven into the wound."
    ),
)
