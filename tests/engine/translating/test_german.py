"""The German that comes along is complete, current and without an open doubt."""

from __future__ import annotations

import re
from functools import cache

import pytest
from chamberwise.engine.approval.translations import stands
from chamberwise.engine.reading.drills import Drills, read_drills
from chamberwise.engine.reading.library import File, Loaded, load_library
from chamberwise.engine.translating.applying import translated
from chamberwise.engine.translating.checking import check_translation
from chamberwise.engine.translating.doubts import MARK
from chamberwise.engine.translating.drill_texts import drill_originals, translated_drills
from chamberwise.engine.translating.finding import read_translations, whole_ones
from chamberwise.engine.translating.segments import VOCABULARY, originals, segments_of
from chamberwise.tui.command.finding_files import shipped

FLAGSHIP = "posterior-capsule-rupture"


@cache
def library() -> Loaded:
    return load_library(shipped())


@cache
def drills() -> Drills:
    return read_drills(shipped())


@cache
def files() -> tuple[File, ...]:
    return tuple(read_translations(shipped(), "de"))


def test_every_pathway_and_the_shared_words_have_a_file() -> None:
    every = {*originals(library().library), *drill_originals(drills())}
    assert {each.of for each in whole_ones(files())} == every
    assert FLAGSHIP in library().library.pathways
    assert VOCABULARY in originals(library().library)


@pytest.mark.parametrize("file", files(), ids=lambda each: each.shown_as)
def test_a_file_has_no_problem_and_says_that_nobody_has_reviewed_it(file: File) -> None:
    assert [*file.problems, *check_translation(library(), file, drill_originals(drills()))] == []
    assert file.translation is not None
    assert not stands(file.translation)
    assert not file.translation.approved_by
    assert "`unreviewed`" in file.text.splitlines()[1]


def test_nothing_is_shown_in_english() -> None:
    told = translated(library(), "de", whole_ones(files())).library
    assert told.translation is not None
    assert set(told.translation.in_english.values()) == {0}
    assert told.translation.texts[FLAGSHIP] > 2000
    said = [*told.pathways.values(), told.shared]
    assert [text for each in said for text in segments_of(each).values() if MARK in text] == []
    in_german = translated_drills(drills(), "de", whole_ones(files()))
    texts = [text for each in drill_originals(in_german).values() for text in each.values()]
    assert len(texts) > 400
    assert [text for text in texts if MARK in text] == []
    assert {lacking for lacking, _texts in in_german.in_english.values()} == {0}


def test_a_german_text_is_not_the_english_one() -> None:
    """Only names, units and the like are the same in both; an English word or two betrays it."""
    english = re.compile(r"\b(?:the|and|of|is|with|without|before|after|from|by)\b", re.IGNORECASE)
    texts = [text for each in whole_ones(files()) for text in each.texts]
    assert [each.says for each in texts if english.search(each.says)] == []
    same = {each.says for each in texts if each.says == each.source}
    assert len(same) < 15, same


def test_one_source_is_said_alike_everywhere_but_where_the_context_asks() -> None:
    said: dict[str, set[str]] = {}
    for each in whole_ones(files()):
        for text in each.texts:
            said.setdefault(text.source, set()).add(text.says)
    assert {source for source, several in said.items() if len(several) > 1} <= {"None"}
