"""The names of the sheets that can be printed, and how they are told and asked for."""

from __future__ import annotations

from chamberwise.engine.language.languages import ENGLISH, LANGUAGES
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.stamp.sheet import kind_of, language_of, named
from chamberwise.exports.printing.kind import Kind


def sheet_name(kind: Kind, language: str | None = None) -> str:
    """Return the name of a kind in a language, by default the one that is spoken.

    >>> sheet_name(Kind.WALL_CHART, "de")
    'wall-chart.de'
    """
    return named(kind.value, language or spoken().code)


def sheet_names(language: str) -> tuple[str, ...]:
    """Return the name of every sheet that can be printed in a language."""
    return tuple(sheet_name(kind, language) for kind in Kind)


def sheet_told(name: str) -> str:
    """Return a sheet in words; one that this version does not know, as it is named."""
    kind, language = kind_of(name), LANGUAGES.get(language_of(name))
    if kind not in [*Kind] or language is None:
        return name
    words = Kind(kind).words
    return words if language is spoken() else f"{words} ({language.own_title})"


def sheet_asked_for(name: str) -> str:
    """Return what is typed to have a sheet printed.

    >>> sheet_asked_for("wall-chart.de")
    '--what wall-chart --language de'
    """
    asked, language = f"--what {kind_of(name)}", language_of(name)
    return asked if language == ENGLISH.code else f"{asked} --language {language}"
