"""German words that turn a sentence into its opposite."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _

_SET_PHRASES = (
    r"nicht\s(?:mehr|weniger|länger|später|höher|tiefer|früher|weiter)\sals",
    r"nicht\snur",
    r"oder\snicht",
    r"ja\s(?:oder|und)\snein",
)
_NEGATORS = (
    r"nicht|nichts|nie|niemals|niemand\w*|nirgends|nirgendwo|kein\w*|ohne|weder|außer|"
    r"vermeide[nt]?|unterlassen?|sofern\snicht"
)
_FIND = re.compile(
    rf"\b(?:(?P<phrase>{'|'.join(_SET_PHRASES)})|(?P<negator>{_NEGATORS}))\b", re.IGNORECASE
)
_TURNED = re.compile(r"ohne|außer|vermeide[nt]?|unterlassen?", re.IGNORECASE)


def negators(sentence: str) -> list[str]:
    """Return the negators of a sentence.

    >>> negators("Nicht aspirieren, ohne den Glaskörper zu färben; nicht mehr als 5 mm.")
    ['Nicht', 'ohne']
    """
    return [each.group() for each in _FIND.finditer(sentence) if each.group("negator")]


def double_negative(sentence: str) -> Iterator[str]:
    """Yield where one negator turns another: "nicht ... ohne", "nicht ... vermeiden"."""
    first, *rest = negators(sentence) or [""]
    for each in rest:
        if not _TURNED.fullmatch(first) and _TURNED.fullmatch(each):
            yield _('"{first}" and "{second}" act on each other').format(first=first, second=each)
            return


def negated_question(text: str) -> Iterator[str]:
    """Yield the negator of a question: a yes to it is read either way.

    >>> len([*negated_question("Ist kein Glaskörper in der Vorderkammer?")])
    1
    """
    if text.rstrip().endswith("?"):
        for each in negators(text)[:1]:
            yield _('the question is asked with "{negator}"').format(negator=each)
