"""What is done, said or asked is short enough to be kept in mind when read aloud once.

Words are counted over the whole text; running prose has its own limit in `sentence_too_long`.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import Hit, TextKind, WordingRule
from chamberwise.engine.checks.wording.sentences import words
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _

_MOST = 20


def _find(text: str) -> Iterator[Hit]:
    counted = words(text, 0, len(text))
    over = len(counted) - _MOST
    if over > 0:
        yield Hit(
            counted[_MOST][0],
            counted[-1][1],
            _("{count} words; at most {most}").format(count=len(counted), most=_MOST),
            ngettext(
                'take out {over} word, or move the reason to "why"',
                'take out {over} words, or move the reason to "why"',
                over,
            ).format(over=over),
        )


RULE = WordingRule(
    slug="too-many-words",
    title=N_("Too many words to act on"),
    severity=Severity.ERROR,
    why=N_(
        "The end of a long line is forgotten or never read out; in an emergency that "
        "end is often the limit or the condition that keeps the act safe."
    ),
    source=N_(
        "ASD-STE100 limit of 20 words for a procedural sentence (secondary source "
        "read); counting the whole line is our stricter reading"
    ),
    reads=frozenset({TextKind.INSTRUCTION, TextKind.INSTEAD, TextKind.SPOKEN, TextKind.QUESTION}),
    find=_find,
    wrong=(
        "Inject the dispersive viscoelastic through the side port between the tear and the pieces"
        " of nucleus that remain in front of it until the chamber is deep."
    ),
    right="Inject dispersive viscoelastic between the tear and the remaining pieces.",
)
