"""One language at a time, chosen by whoever asks, English where nobody does."""

from __future__ import annotations

from datetime import date

import pytest
from chamberwise.engine.language.numbers import day_in_words, decimal
from chamberwise.engine.language.speaking import speak, speaking, spoken
from chamberwise.engine.language.texts import gettext, ngettext
from chamberwise.tui.command.finding_files import UnusableError
from chamberwise.tui.command.language import speak_as_asked, unreviewed

DAY = date(2026, 11, 9)


def test_english_is_spoken_as_it_is_written() -> None:
    assert spoken().code == "en"
    assert gettext("Languages") == "Languages"
    assert ngettext("one", "many", 2) == "many"
    assert decimal("0.25") == "0.25"
    assert day_in_words(DAY) == "Mon 9 Nov 2026"
    assert unreviewed(spoken()) == ""


def test_a_language_is_spoken_for_a_while() -> None:
    with speaking("de") as language:
        assert spoken() is language
        assert decimal("0.25") == "0,25"
        # CLDR 46 through Babel: abbreviated German months take a point.
        assert day_in_words(DAY) == "Mo. 9. Nov. 2026"
        assert "Deutsch" in unreviewed(language)
    assert spoken().code == "en"


@pytest.mark.parametrize(
    ("typed", "environment", "code", "rest"),
    [
        (["list"], {}, "en", ["list"]),
        (["--language", "de", "list"], {}, "de", ["list"]),
        (["list", "--language=de"], {}, "de", ["list"]),
        (["list"], {"CHAMBERWISE_LANGUAGE": "de"}, "de", ["list"]),
        (["list", "--language", "en"], {"CHAMBERWISE_LANGUAGE": "de"}, "en", ["list"]),
        (["list"], {"LANG": "de_DE.UTF-8"}, "en", ["list"]),
    ],
)
def test_the_language_is_asked_for(
    typed: list[str], environment: dict[str, str], code: str, rest: list[str]
) -> None:
    try:
        assert speak_as_asked(typed, environment) == rest
        assert spoken().code == code
    finally:
        speak("en")


def test_a_language_that_is_not_there_is_refused_by_name() -> None:
    with pytest.raises(UnusableError, match="no language `xx`"):
        speak_as_asked(["list", "--language", "xx"], {})
    with pytest.raises(UnusableError, match="CHAMBERWISE_LANGUAGE"):
        speak_as_asked(["list"], {"CHAMBERWISE_LANGUAGE": "xx"})
    assert spoken().code == "en"
