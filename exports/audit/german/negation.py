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
_APART = re.compile(
    r"[;:()–—]|,\s(?:und|aber|sondern|so|dann)\b|\b(?:aber|sondern)\b", re.IGNORECASE
)
"""Between two statements, as the English rule has it."""
_TURNED = re.compile(r"ohne|außer|vermeide[nt]?|unterlassen?", re.IGNORECASE)


def negators(sentence: str) -> list[str]:
    """Return the negators of a sentence.

    >>> negators("Nicht aspirieren, ohne den Glaskörper zu färben; nicht mehr als 5 mm.")
    ['Nicht', 'ohne']
    """
    return [each.group() for each in _FIND.finditer(sentence) if each.group("negator")]


def double_negative(sentence: str) -> Iterator[str]:
    """Yield where one negator turns another: "nicht ... ohne", "nicht ... vermeiden".

    >>> len([*double_negative("Nicht aspirieren ohne Färbung")])
    1
    >>> len([*double_negative("Noch nicht festgelegt: Linse (ohne Kapsel)")])
    0
    """
    for part in _APART.split(sentence):
        first, *rest = negators(part) or [""]
        for each in rest:
            if not _TURNED.fullmatch(first) and _TURNED.fullmatch(each):
                told = _('"{first}" and "{second}" act on each other')
                yield told.format(first=first, second=each)
                return


def negated_question(text: str) -> Iterator[str]:
    """Yield the negator of a question: a yes to it is read either way.

    "Ohne" is let through like "without" in English: it names a thing ("eine Linse ohne Kapsel").

    >>> len([*negated_question("Ist kein Glaskörper in der Vorderkammer?")])
    1
    """
    if text.rstrip().endswith("?"):
        found = [each for each in negators(text) if each.lower() != "ohne"]
        for each in found[:1]:
            yield _('the question is asked with "{negator}"').format(negator=each)
