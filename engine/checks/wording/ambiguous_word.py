"""Words that leave the amount, the time or the condition to the reader.

Also a text that opens with "it" or "this" and so speaks of something on another line. Words that
leave an act open ("consider", "gently") are in `act_left_open`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.lexicon import open_phrase, unsettled
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, TextKind, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_LIMIT = (
    r"\bwithin\b|\b(?:at most|by)\s[0-9]"
    r"|[0-9]\s?(?:s|min|h|seconds?|minutes?|hours?|days?|weeks?)\b"
)
_WHEN = N_('name the sign that decides, e.g. "if the wound leaks"')

_PHRASES = (
    open_phrase(
        r"(?:as|if|when|where|wherever|whenever)\s(?:(?:is|it\sis|clinically)\s)?"
        r"(?:appropriate|required|needed|necessary|indicated)(?!\s(?:by|for)\b)",
        N_("when it applies"),
        _WHEN,
    ),
    open_phrase(
        r"(?:if|when|where|wherever|whenever)\s(?:at\sall\s)?possible|as\s(?:far|much)\sas\spossible",
        N_("who decides that it can be done"),
        _WHEN,
    ),
    open_phrase(
        r"as\ssoon\sas\spossible|(?<!as\s)(?<!too\s)soon(?!\sas\b)|promptly|shortly",
        N_("by when"),
        N_('give the limit, e.g. "within 5 min"'),
        _LIMIT,
    ),
    open_phrase(
        r"adequate(?:ly)?|sufficient(?:ly)?|(?<!as\s)(?<!if\s)(?<!when\s)(?<!where\s)appropriate(?:ly)?",
        N_("how much"),
        N_('give the amount or the sign, e.g. "until the iris lies flat"'),
    ),
    open_phrase(
        r"normal(?!\ssaline|[-\s]tension|\s\(0\.9)",
        N_("what counts as normal"),
        N_('give the figure or the sign, e.g. "as deep as before the rupture", "10 to 20 mmHg"'),
    ),
    open_phrase(
        r"regularly|periodically|frequently|from\stime\sto\stime|at\sintervals(?!\sof)",
        N_("how often"),
        N_('give the interval, e.g. "every 5 min"'),
        r"\bevery\s(?:[0-9]|one|two|hour|minute|day|time|step)",
    ),
    open_phrase(r"and/or", N_("whether one or both are meant"), N_('write "A, or B, or both"')),
    open_phrase(
        r"etc\b\.?|and\sso\s(?:on|forth)(?!\w)",
        N_("what else belongs to the list"),
        N_("name every item"),
    ),
)

_OPENING = re.compile(
    r"\s*+(?P<word>(?:it|this|that|they|these|those)(?=\s(?:is|was|has|are|were|have|can|will|would"
    r"|must|does|do|may|might|should|could|cannot|also|then|often|only|never)\b)"
    r"|(?:it|this|that)(?=\s(?!lens\b|\w++(?<=[siu]s)(?!\w))[a-z]++(?<=s)\b))",
    re.IGNORECASE,
)
_NOT_A_REFERENCE = re.compile(
    r"\s*+(?:it\stakes\b|it\s(?:is|was|may\sbe|can\sbe)\s(?:not\s)?[\w-]+\s(?:to|that|for|how|whether)\b"
    r"|(?:it|this|that)\s(?:is|was)\s(?:the|an?|our|my)\b)",
    re.IGNORECASE,
)
"""Clauses such as "It is known that", and those that name what they speak of: "This is a ..."."""


def _find(text: str) -> Iterator[Hit]:
    opening = _OPENING.match(text)
    if opening and not _NOT_A_REFERENCE.match(text):
        word = opening.group("word")
        start, end = opening.span("word")
        yield Hit(
            start, end, _('"{word}" names nothing in this text').format(word=word), _name_it(word)
        )
    yield from unsettled(text, _PHRASES)


def _name_it(word: str) -> str:
    return _('write the thing itself instead of "{word}", e.g. "The tip"').format(word=word)


RULE = WordingRule(
    slug="ambiguous-word",
    title=N_("Word that leaves a limit open"),
    severity=Severity.WARNING,
    why=N_(
        "Two people read two different limits into the word, and each believes that "
        "the other agrees; it cannot be told afterwards whether the step was done."
    ),
    source=N_("procedure writers' guides (from memory); common practice"),
    reads=EVERY_KIND - {TextKind.TITLE},
    find=_find,
    wrong="Fill the chamber until it has normal depth.",
    right="Fill the chamber until the iris lies flat.",
)
