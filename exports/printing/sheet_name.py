"""The name of a sheet in stamps and in the register: its kind, and its language where not English.

Printed words differ from language to language, so each has a stamp of its own.
"""

from __future__ import annotations

from chamberwise.engine.language.languages import ENGLISH, LANGUAGES, Language
from chamberwise.engine.language.speaking import spoken
from chamberwise.exports.printing.kind import Kind

BETWEEN = "."


def sheet_name(kind: Kind, language: Language | None = None) -> str:
    """Return the name of a kind in a language, by default the one that is spoken.

    >>> sheet_name(Kind.WALL_CHART), sheet_name(Kind.WALL_CHART, LANGUAGES["de"])
    ('wall-chart', 'wall-chart.de')
    """
    code = (language or spoken()).code
    return kind.value if code == ENGLISH.code else f"{kind.value}{BETWEEN}{code}"


def every_sheet_name() -> tuple[str, ...]:
    """Return the name of every sheet that can be printed, in every language."""
    return tuple(sheet_name(kind, language) for language in LANGUAGES.values() for kind in Kind)


def sheet_told(name: str) -> str:
    """Return a sheet in words; one that this version does not know, as it is named."""
    kind, _dot, code = name.partition(BETWEEN)
    language = LANGUAGES.get(code or ENGLISH.code)
    if kind not in [*Kind] or language is None:
        return name
    words = Kind(kind).words
    return words if language is spoken() else f"{words} ({language.own_title})"


def sheet_asked_for(name: str) -> str:
    """Return what is typed to have a sheet printed.

    >>> sheet_asked_for("wall-chart.de")
    '--what wall-chart --language de'
    """
    kind, _dot, code = name.partition(BETWEEN)
    return f"--what {kind} --language {code}" if code else f"--what {kind}"
