"""The name of a sheet in stamps and in the register: its kind, and its language where not English.

Printed words differ from language to language, so each has a stamp of its own.
"""

from __future__ import annotations

from chamberwise.engine.language.languages import ENGLISH

BETWEEN = "."


def named(kind: str, language: str) -> str:
    """Return the name of a kind in a language, by its code.

    >>> named("wall-chart", "en"), named("wall-chart", "de")
    ('wall-chart', 'wall-chart.de')
    """
    return kind if language == ENGLISH.code else f"{kind}{BETWEEN}{language}"


def kind_of(sheet: str) -> str:
    """Return the kind of a sheet by its name."""
    return sheet.partition(BETWEEN)[0]


def language_of(sheet: str) -> str:
    """Return the code of the language of a sheet by its name.

    >>> language_of("wall-chart"), language_of("wall-chart.de")
    ('en', 'de')
    """
    return sheet.partition(BETWEEN)[2] or ENGLISH.code
