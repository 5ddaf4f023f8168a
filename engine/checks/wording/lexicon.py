"""A word or phrase that leaves something open, and what in the same sentence settles it.

The rules on vague words are tables of these.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.checks.wording.rule import Hit
from chamberwise.engine.checks.wording.sentences import sentences
from chamberwise.engine.language.texts import gettext as _


@dataclass(frozen=True, slots=True)
class OpenPhrase:
    """A phrase that is reported unless the sentence it stands in settles what it leaves open."""

    phrase: re.Pattern[str]
    leaves_open: str
    advice: str
    settled_by: re.Pattern[str] | None = None


def open_phrase(
    phrase: str, leaves_open: str, advice: str, settled_by: str | None = None
) -> OpenPhrase:
    """Return an entry from plain patterns, whole words in any case."""
    settled = re.compile(settled_by, re.IGNORECASE) if settled_by else None
    return OpenPhrase(
        re.compile(rf"\b(?:{phrase})(?!\w)", re.IGNORECASE), leaves_open, advice, settled
    )


def unsettled(text: str, phrases: Iterable[OpenPhrase]) -> Iterator[Hit]:
    """Yield a hit for each phrase that its sentence leaves open, in the order of the text."""
    entries = tuple(phrases)
    for start, end in sentences(text):
        hits = [hit for entry in entries for hit in _in_sentence(text, start, end, entry)]
        yield from sorted(hits, key=lambda hit: hit.start)


def _in_sentence(text: str, start: int, end: int, entry: OpenPhrase) -> Iterator[Hit]:
    found = list(entry.phrase.finditer(text, start, end))
    if not found or (entry.settled_by and entry.settled_by.search(text, start, end)):
        return
    for match in found:
        message = _('"{found}" leaves open {what}').format(
            found=match.group(), what=_(entry.leaves_open)
        )
        yield Hit(match.start(), match.end(), message, _(entry.advice))
