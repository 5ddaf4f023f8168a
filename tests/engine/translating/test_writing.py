"""A translation file written anew keeps every translation, whatever became of its text."""

from __future__ import annotations

from dataclasses import replace

import pytest
from chamberwise.engine.approval.translations import seal_of_translation, stands
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.reading.library import read_text
from chamberwise.engine.reading.translation_file import TranslationFile
from chamberwise.engine.translating.writing import line_commented_out, renewed, scalar, sheet_block
from hypothesis import given
from hypothesis import strategies as st

SEGMENTS: dict[Pointer, str] = {
    ("title",): "Wet wound",
    ("steps", "press", "do", 0, "does"): "Press: never pull.",
    ("steps", "done", "outcome"): "Done",
}


def read(text: str) -> TranslationFile:
    file = read_text(text, "de/wet-wound.yaml")
    assert file.problems == []
    assert file.translation is not None
    return file.translation


def written(segments: dict[Pointer, str], file: TranslationFile | None = None) -> str:
    return renewed("wet-wound", "de", segments, file).text


def filled(says: dict[Pointer, str]) -> str:
    lines = iter(says.values())
    return "\n".join(
        f"    says: {scalar(next(lines))}" if line == "    # says:" else line
        for line in written(SEGMENTS).splitlines()
    )


SAID = dict(zip(SEGMENTS, ("Nasser Schnitt", "Drücken: nie ziehen.", "Ende"), strict=True))


def test_a_fresh_file_has_a_place_for_every_text_and_says_that_nobody_has_read_it() -> None:
    text = written(SEGMENTS)
    assert "`unreviewed`" in text.splitlines()[1]
    file = read(text)
    assert [each.at for each in file.texts] == [*SEGMENTS]
    assert [each.says for each in file.texts] == ["", "", ""]
    assert not file.is_called_approved


def test_written_anew_it_is_the_same() -> None:
    text = written(SEGMENTS, read(filled(SAID)))
    assert {each.at: each.says for each in read(text).texts} == SAID
    assert written(SEGMENTS, read(text)) == text


def test_a_changed_text_stands_beside_what_was_translated() -> None:
    now = {**SEGMENTS, ("title",): "Very wet wound"}
    fresh = renewed("wet-wound", "de", now, read(filled(SAID)))
    assert "    source: Wet wound\n    # now: Very wet wound\n" in fresh.text
    again = read(fresh.text)
    assert again.texts[0].source == "Wet wound"
    assert again.texts[0].says == "Nasser Schnitt"
    assert written(now, again) == fresh.text


def test_what_is_gone_is_put_aside_and_taken_over_where_the_text_comes_again() -> None:
    fewer = {at: text for at, text in SEGMENTS.items() if at != ("title",)}
    fresh = renewed("wet-wound", "de", fewer, read(filled(SAID)))
    assert fresh.put_aside == 1
    file = read(fresh.text)
    assert [each.says for each in file.aside] == ["Nasser Schnitt"]
    back = renewed("wet-wound", "de", {**fewer, ("summary",): "Wet wound"}, file)
    assert back.taken_over == 1
    found = read(back.text)
    assert found.texts[-1].says == "Nasser Schnitt"
    assert len(found.aside) == 1, "what was put aside once stays"


def test_of_two_for_one_place_the_second_is_put_aside() -> None:
    twice = filled(SAID) + "\n  - at: title\n    of: ZE6X-PR7Y-B0Q0\n    says: Noch eine\n"
    fresh = renewed("wet-wound", "de", SEGMENTS, read(twice))
    assert [each.says for each in read(fresh.text).aside] == ["Noch eine"]


def test_who_reviewed_it_and_what_was_accepted_stay() -> None:
    text = filled(SAID).replace(
        "status: unreviewed",
        "status: approved\napproved by: Clinical lead\napproved on: 2026-11-25\n"
        "translated by: ['Trainee, theatre 2', Educator]",
    )
    text = text.replace("says: Nasser Schnitt", "says: Nasser Schnitt\n    accepted: 'A reason: x'")
    approved = replace(read(text), seal=seal_of_translation(read(text)))
    again = read(written(SEGMENTS, approved))
    assert stands(again)
    assert again == approved
    assert again.texts[0].accepted == "A reason: x"


@pytest.mark.parametrize(
    ("line", "found"),
    [("    # says: Ende", True), ("    #says: Ende", True), ("    # says:", False)],
)
def test_a_translation_in_a_remark_is_noticed(line: str, found: bool) -> None:
    text = written(SEGMENTS).replace("    # says:", line, 1)
    assert (line_commented_out(text) is not None) is found


@given(st.text(st.characters(codec="ascii", categories=("L", "N", "P", "S", "Zs")), min_size=1))
def test_any_text_is_read_as_it_was_written(text: str) -> None:
    said = " ".join(text.split())
    if said and said not in ("~", "null", "Null", "NULL"):
        says = f"    says: {scalar(text)}"
        again = read(written(SEGMENTS).replace("    # says:", says, 1))
        assert again.texts[0].says == said


def test_what_a_sheet_lacks_is_a_block_to_fill() -> None:
    block = sheet_block("de", [("other", ("steps", "press", "do", 0, "does"), "Press.")])
    assert block.splitlines()[:3] == [
        "translations:",
        "  de:",
        "    - at: steps / press / do / 1 / does",
    ]
    assert "      in: other" in block
    assert "      says: ''" in block
