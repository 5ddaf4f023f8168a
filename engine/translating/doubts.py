"""What makes a translation doubtful: figures, units or negations that are not those of its source.

A comparison of words, not of meaning: it finds slips of the pen, and no bad translation.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.translating.figures import Figure, figures
from chamberwise.engine.translating.negations import negations

MARK = f"[{ENGLISH.code}]"
"""Stands before a text that is shown in English, in a screen or sheet of another language."""

_LEFT_OVER = re.compile(
    rf"\b(?:TODO|FIXME|TBD|XXX)\b|\?\?\?|<[^<>]*>|{re.escape(MARK)}", re.IGNORECASE
)
_HELD = re.compile(r"`[^`]*`|\{[^{}]*\}")


class Kind(StrEnum):
    """What a doubt is about, worst first."""

    QUANTITY = "quantity"
    FIGURE = "figure"
    NEGATION = "negation"
    LEFT_OVER = "left over"


@dataclass(frozen=True, slots=True)
class Doubt:
    """One difference, told. That of a quantity can be accepted by nobody."""

    kind: Kind
    message: str

    @property
    def can_be_accepted(self) -> bool:
        """Whether somebody may say why it is right nevertheless."""
        return self.kind in (Kind.FIGURE, Kind.NEGATION)


def doubts(source: str, says: str, language: str) -> tuple[Doubt, ...]:
    """Return what is doubtful in the translation of an English text."""
    return tuple(_doubts(source, says, language))


def _doubts(source: str, says: str, language: str) -> Iterator[Doubt]:
    was, now = figures(source, ENGLISH.code), figures(says, language)
    if was != now:
        odd = [*(was - now), *(now - was)]
        kind = Kind.QUANTITY if any(each.unit for each in odd) else Kind.FIGURE
        message = _("the source has {was}, the translation has {now}")
        yield Doubt(kind, message.format(was=_told(was - now), now=_told(now - was)))
    no, nein = negations(source, ENGLISH.code), negations(says, language)
    if len(no) != len(nein):
        message = _(
            "the source says no {number} times ({words}), the translation {others} ({said})"
        )
        yield Doubt(
            Kind.NEGATION,
            message.format(number=len(no), words=_listed(no), others=len(nein), said=_listed(nein)),
        )
    if found := _LEFT_OVER.search(says):
        yield Doubt(Kind.LEFT_OVER, _("`{found}` was left in it").format(found=found.group()))
    if sorted(_HELD.findall(source)) != sorted(_HELD.findall(says)):
        yield Doubt(Kind.LEFT_OVER, _("names in backticks or braces are not those of the source"))


def _told(some: Counter[Figure]) -> str:
    return _listed(str(each) for each in sorted(some.elements()))


def _listed(words: Iterable[str]) -> str:
    return ", ".join(words) or _("none")
