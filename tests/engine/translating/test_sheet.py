"""What a unit's sheet translates lies over what comes along, held to the texts of the unit."""

from __future__ import annotations

from chamberwise.engine.approval.sealing import changed_since, seal_of
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import Loaded, read_text
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.translating.applying import translated
from chamberwise.engine.translating.doubts import MARK
from chamberwise.engine.translating.own_texts import own_texts
from chamberwise.engine.translating.segments import text_digest

from tests.engine.local.stage import PATHWAY, below, sheet

AT = ("steps", "tell", "do", 0, "says")
WAS, OWN = "The wound is closed.", "All is closed."
WORDING = f"""
wording:
  - at: steps / tell / do / 1 / says
    expects: {WAS}
    says: {OWN}
"""
CAME_ALONG = TranslationFile(
    PATHWAY, "de", (TranslatedText(AT, text_digest(WAS), "Der Schnitt ist zu.", ("texts", 0)),)
)


def with_(text: str) -> Loaded:
    head = sheet("stale-text").text.split("\nwording:")[0]
    return localised(below(), read_text(head + WORDING + text, "unit.yaml"))


def translations(says: str, of: str = OWN, at: str = "steps / tell / do / 1 / says") -> str:
    return f"""
translations:
  de:
    - at: {at}
      of: {text_digest(of)}
      says: {says}
"""


def found(loaded: Loaded) -> list[Problem]:
    return loaded.files["unit.yaml"].problems


def line(loaded: Loaded) -> str:
    told = translated(loaded, "de", [CAME_ALONG]).library.pathways[PATHWAY].steps["tell"]
    return str(told.lines[0].text)


def test_without_its_own_translation_a_wording_stands_in_english() -> None:
    loaded = with_("")
    assert found(loaded) == []
    assert line(loaded) == f"{MARK} {OWN}"
    assert own_texts(below(), loaded, "de", [CAME_ALONG]) == [("", AT, OWN)]


def test_a_wording_is_translated_by_the_sheet() -> None:
    loaded = with_(translations("Alles ist zu."))
    assert found(loaded) == []
    assert line(loaded) == "Alles ist zu."
    assert own_texts(below(), loaded, "de", [CAME_ALONG]) == []


def test_without_the_wording_the_translation_that_came_along_is_taken() -> None:
    assert line(localised(below(), sheet("stale-text"))) == "Der Schnitt ist zu."


def test_what_is_wrong_with_it_is_told_at_its_line() -> None:
    for text, slug in (
        (translations("Alles ist zu.", of=WAS), "stale-translation"),
        (translations("Nichts ist zu."), "negation-differs"),
        (translations("Alles ist 2 mm zu."), "quantity-differs"),
        (translations("Alles ist zu.", at="steps / tel / do / 1 / says"), "no-such-text"),
        (translations("Alles ist zu.").replace("  de:", "  dee:"), "no-such-language"),
        (translations("''"), "wrong-value"),
    ):
        problems = found(with_(text))
        assert [each.code for each in problems] == [slug]
        assert problems[0].span
        assert problems[0].span.line > 12


def test_a_translation_is_approved_with_the_sheet_and_changes_no_walk_and_no_english_sheet() -> (
    None
):
    one, other = with_(translations("Alles ist zu.")), with_(translations("Alles zu."))
    assert one.library.pathways == other.library.pathways
    assert content_digest(one.library, PATHWAY) == content_digest(other.library, PATHWAY)
    seals = [seal_of(each.library, PATHWAY) for each in (one, other)]
    assert changed_since(*seals) == ("translated",)
