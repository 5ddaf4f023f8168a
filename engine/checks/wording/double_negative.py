"""Two negators that act on each other in one sentence.

Negators side by side ("no strand and no traction") or on either side of a comma are two plain
statements, and are left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.negation import negators
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, TextKind, WordingRule
from chamberwise.engine.checks.wording.sentences import sentences, without_quotes
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_APART = re.compile(r"[,;:()–—]|\b(?:and|or|but|then|so|because|nor)\b", re.IGNORECASE)
_FAR_APART = re.compile(r"[;:()–—]|,\s{1,3}(?:and|but|so|then)\b|\bbut\b", re.IGNORECASE)
_REACHING_BACK = frozenset({"unless", "except", "without"})


def _find(text: str) -> Iterator[Hit]:
    bare = without_quotes(text)
    for start, end in sentences(bare):
        for chain in _chains(bare, start, end):
            if len(chain) > 1:
                named = ", ".join(_('"{words}"').format(words=found.group()) for found in chain[:4])
                yield Hit(
                    chain[0].start(),
                    chain[-1].end(),
                    _("{named} turn each other round").format(named=named),
                    _('say when it is done, e.g. "Withdraw the tip only when the chamber is full"'),
                )


def _chains(text: str, start: int, end: int) -> Iterator[list[re.Match[str]]]:
    """Yield runs of negators that act on one another."""
    chain: list[re.Match[str]] = []
    for found in negators(text, start, end, adjectives=True):
        if chain and _stand_apart(text, chain[-1], found):
            yield chain
            chain = []
        chain.append(found)
    yield chain


def _stand_apart(text: str, first: re.Match[str], second: re.Match[str]) -> bool:
    word = second.group().lower()
    boundary = _FAR_APART if word in _REACHING_BACK else _APART
    return word == "nor" or boundary.search(text, first.end(), second.start()) is not None


RULE = WordingRule(
    slug="double-negative",
    title=N_("Double negative"),
    severity=Severity.ERROR,
    why=N_(
        "Each negative takes about a quarter more time to understand, and two are "
        "often understood as their opposite: the team stops when it must go on."
    ),
    source=N_("Just and Clark 1973 on negative instructions (secondary source read)"),
    reads=EVERY_KIND - {TextKind.REASON},
    find=_find,
    wrong="Do not stop the infusion unless the chamber is not stable.",
    right="Stop the infusion only when the chamber is full.",
)
