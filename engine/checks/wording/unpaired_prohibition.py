"""A prohibition in an instruction comes with the right thing to do.

Cautions are paired with their `instead` by the format, so they are not read here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.clauses import act_start, prohibition_at
from chamberwise.engine.checks.wording.rule import TO_BE_DONE, Hit, WordingRule
from chamberwise.engine.checks.wording.sentences import sentences, without_quotes
from chamberwise.engine.checks.wording.verbs import verb_at
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_BREAK = re.compile(r"[;:–—]\s?|,\s{0,3}|\b(?:and|but|then|instead|only)\b", re.IGNORECASE)
_LIST_OF_VERBS = re.compile(r"\b(?:or|nor)\b", re.IGNORECASE)


def _find(text: str) -> Iterator[Hit]:
    bare = without_quotes(text)
    first: re.Match[str] | None = None
    for start, end in sentences(bare):
        forbidden, positive = _read(bare[:end], start)
        if positive:
            return
        first = first or forbidden
    if first:
        begin, end = first.span(1)
        yield Hit(
            begin,
            end,
            _('"{found}" without what to do instead').format(found=first.group(1)),
            _(_ADVICE),
        )


_ADVICE = N_('first say what to do, e.g. "Keep the tip still; do not withdraw it"')


def _read(sentence: str, start: int) -> tuple[re.Match[str] | None, bool]:
    """Return the first prohibition of a sentence, and whether it also says what to do."""
    begin = act_start(sentence, start)
    if begin is None:
        return None, False
    forbidden = prohibition_at(sentence, begin)
    if forbidden is None:
        return None, True
    listed = _LIST_OF_VERBS.search(sentence, forbidden.end()) is not None
    return forbidden, _says_more(sentence, forbidden.end(), listed=listed)


def _says_more(sentence: str, start: int, *, listed: bool) -> bool:
    """Return whether an instruction follows; "and" and a list with "or" stay under the "not"."""
    for turn in _BREAK.finditer(sentence, start):
        word = turn.group().strip().lower()
        if word == "and" or (word == "," and listed):
            continue
        if prohibition_at(sentence, turn.end()) is None and verb_at(sentence, turn.end()):
            return True
    return False


RULE = WordingRule(
    slug="unpaired-prohibition",
    title=N_("Prohibition without what to do instead"),
    severity=Severity.ERROR,
    why=N_(
        "A hand that is only told what it must not do stops, or does the next thing it "
        "knows; with a ruptured capsule either can bring vitreous forward."
    ),
    source=N_(
        "research on redundant action words in negative instructions (secondary source read)"
    ),
    reads=TO_BE_DONE,
    find=_find,
    wrong="Do not withdraw the tip.",
    right="Keep the tip in the eye; do not withdraw it.",
)
