"""Which language is asked for: `--language CODE` among what was typed, or CHAMBERWISE_LANGUAGE.

The language of the machine is not taken over by itself: a translation that nobody has reviewed is
shown only to somebody who asked for it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from chamberwise.engine.language.languages import ENGLISH, LANGUAGES, Language
from chamberwise.engine.language.speaking import speak
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError

OPTION = "--language"
VARIABLE = "CHAMBERWISE_LANGUAGE"


def speak_as_asked(typed: Sequence[str], environment: Mapping[str, str]) -> list[str]:
    """Speak the language asked for, and return what was typed without the asking.

    Raises `UnusableError` where there is no such language.
    """
    asked_by, code, rest = VARIABLE, environment.get(VARIABLE) or ENGLISH.code, []
    words = iter(typed)
    for word in words:
        if word == OPTION:
            asked_by, code = OPTION, next(words, "")
        elif word.startswith(f"{OPTION}="):
            asked_by, code = OPTION, word.removeprefix(f"{OPTION}=")
        else:
            rest.append(word)
    if code not in LANGUAGES:
        raise UnusableError(_no_such(asked_by, code))
    speak(code)
    return rest


def _no_such(asked_by: str, code: str) -> str:
    known = ", ".join(f"{each.code} ({each.own_title})" for each in LANGUAGES.values())
    return _(
        "{asked_by}: there is no language `{code}`. Texts would come in one nobody asked for. "
        "Languages: {known}."
    ).format(asked_by=asked_by, code=code, known=known)


def unreviewed(language: Language) -> str:
    """Return what is said of a language that no clinician has reviewed, else nothing."""
    if language.is_reviewed:
        return ""
    told = _(
        "{language}: no clinician has reviewed the program's own words; each pathway says whether "
        "its translation was."
    )
    return told.format(language=language.own_title)
