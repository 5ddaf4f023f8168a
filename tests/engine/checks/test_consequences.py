"""One fault is told once: what only seems missing because of it is not held against the author."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
from chamberwise.engine.checks.run import check_files, check_for_walk
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.reading.library import Loaded, assemble, load_library, read_text

from tests.engine.checks.planting.everything import TODAY

FOLDER = Path(__file__).parents[2] / "library"


@cache
def _good() -> Loaded:
    return load_library(FOLDER)


def _damaged(name: str, change: Callable[[str], str]) -> Loaded:
    files = []
    for shown, file in _good().files.items():
        text = change(file.text) if Path(shown).name == name else file.text
        files.append(read_text(text, shown))
    return assemble(files)


def _told(loaded: Loaded) -> list[Problem]:
    return check_files(loaded, list(loaded.files), TODAY)


def _replacing(old: str, new: str) -> Callable[[str], str]:
    def change(text: str) -> str:
        assert old in text
        return text.replace(old, new, 1)

    return change


def test_a_handover_to_a_file_that_cannot_be_read_says_so() -> None:
    loaded = _damaged("pressing-lids.yaml", lambda text: text + "\n\t- x\n")
    found = [each for each in _told(loaded) if each.code == "handover-to-nothing"]
    assert [each.message for each in found] == ["the pathway `pressing-lids` could not be read"]
    assert "pressing-lids.yaml right first" in found[0].advice


def test_a_list_of_words_that_forgot_to_say_so_is_still_one() -> None:
    change = _replacing("vocabulary: Words for the tests of reading and checking\n", "")
    found = _told(_damaged("words.yaml", change))
    assert [each.message for each in found] == ["a vocabulary file has no `vocabulary`"]


@pytest.mark.parametrize(
    ("name", "old", "new", "slug"),
    [
        ("words.yaml", "findings:\n", "findinsg:\n", "unknown-key"),
        ("words.yaml", "duties:\n", "duties:\nduties:\n", "wrong-kind"),
        ("words.yaml", "title: Leak\n", "titel: Leak\n", "unknown-key"),
        ("words.yaml", "calls for help: yes", "calls for help: ja", "wrong-value"),
        ("shallow-chamber.yaml", "  sweep:\n", "  sweep: now\n  swept:\n", "wrong-kind"),
        ("shallow-chamber.yaml", "means: [slow, fast]", "means: slow", "wrong-kind"),
        ("shallow-chamber.yaml", "phases:\n", "phasess:\n", "unknown-key"),
        ("shallow-chamber.yaml", "at most: 2", "at most: twice", "wrong-value"),
        ("pressing-lids.yaml", "outcome: The lids are loose", "outcom: Loose", "unknown-key"),
        ("pressing-lids.yaml", "pathway: pressing-lids", "pathway: [x]", "wrong-kind"),
    ],
)
def test_an_error_of_form_is_not_told_again_as_another(
    name: str, old: str, new: str, slug: str
) -> None:
    of_form = {slug, "missing-key", "duplicate-key", "wrong-value", "handover-to-nothing"}
    found = _told(_damaged(name, _replacing(old, new)))
    assert slug in {each.code for each in found}
    assert {each.code for each in found} <= of_form, [each.message for each in found]


@pytest.mark.parametrize("change", [lambda text: "[", _replacing("findings:\n", "findinsg:\n")])
def test_words_that_cannot_be_read_keep_every_pathway_from_being_walked(
    change: Callable[[str], str],
) -> None:
    loaded = _damaged("words.yaml", change)
    for name in loaded.library.pathways:
        assert check_for_walk(loaded, name, TODAY)


def test_a_misspelt_arrow_does_not_make_a_step_unreachable() -> None:
    change = _replacing("go to: how-is-the-leak", "go to: how-is-the-leek")
    found = _told(_damaged("shallow-chamber.yaml", change))
    assert [(each.code, each.advice) for each in found] == [
        ("leads-nowhere", "Did you mean `how-is-the-leak`?")
    ]


def test_a_misspelt_word_does_not_make_an_answer_missing() -> None:
    change = _replacing("act: withdraw-tip", "act: withdraw-tipp")
    found = _told(_damaged("shallow-chamber.yaml", change))
    assert {each.code for each in found} == {"not-defined", "caution-too-late"}


def test_a_fault_in_the_head_hides_none_in_the_steps() -> None:
    def change(text: str) -> str:
        text = _replacing("edition: ", "edition: v")(text)
        start = text.index("    at most:")
        return text[:start] + text[text.index("\n", text.index("after that:", start)) + 1 :]

    name = next(
        Path(shown).name
        for shown, file in _good().files.items()
        if file.pathway and "    at most:" in file.text
    )
    assert {each.code for each in _told(_damaged(name, change))} >= {
        "wrong-value",
        "loop-without-bound",
    }
