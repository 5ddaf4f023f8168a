"""The words that turn a sentence into its opposite, and where they stand.

Set phrases that only look negative ("no more than", "yes or no") are passed over.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

_SET_PHRASES = (
    r"no(?:t)?\s(?:more|less|later|longer|fewer|greater|higher|lower|earlier|sooner|further)\sthan",
    r"not\s(?:only|applicable|exceeding)",
    r"(?:whether\s)?or\snot",
    r"if\snot(?=,)",
    r"yes\s(?:or|and)\sno",
    r"no\.\s?[0-9]",
    r"no-[a-z]",
)
_NEGATORS = (
    "not|no|never|without|unless|except|cannot|nor|neither|none|nothing|nobody|nowhere",
    r"avoid(?:s|ed|ing)?",
    r"(?:ca|wo|do|does|did|is|are|was|were|has|have|must|should|could|would)n['’]t",
)
_UN_WORDS = (
    "unable|unsafe|unstable|unclear|unlikely|uncommon|unusual|unnecessary|uncertain|unsealed"
    "|uncontrolled|unwell|unaware|unlabelled|unmarked|untrained|unsupported|unsterile|unready"
    "|unsuitable|unsatisfactory|unsuccessful|unacceptable|unfit|unfilled|undetected"
)
_FIND = re.compile(
    rf"\b(?:(?P<phrase>{'|'.join(_SET_PHRASES)})"
    rf"|(?P<negator>{'|'.join(_NEGATORS)})\b|(?P<adjective>{_UN_WORDS})\b)",
    re.IGNORECASE,
)


def negators(
    text: str, start: int = 0, end: int | None = None, *, adjectives: bool = False
) -> Iterator[re.Match[str]]:
    """Yield the negators between two places; with `adjectives` also words such as "unsafe".

    >>> [found.group() for found in negators("Do not stop unless it is no more than 5 mL")]
    ['not', 'unless']
    """
    for found in _FIND.finditer(text, start, len(text) if end is None else end):
        if found.group("negator") or (adjectives and found.group("adjective")):
            yield found
