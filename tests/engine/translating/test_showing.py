"""What a translation changes, and that it changes nothing else."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from chamberwise.engine.checks.texts import of_words, texts
from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.meaning.advance import begin
from chamberwise.engine.model.pathway import Status
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.reading.digest import digest
from chamberwise.engine.reading.library import Loaded, load_library
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.translating.applying import stands, translated
from chamberwise.engine.translating.doubts import MARK
from chamberwise.engine.translating.proof import retold_proof
from chamberwise.engine.translating.retelling import retold_pathway, retold_words
from chamberwise.engine.translating.segments import (
    VOCABULARY,
    originals,
    segments_of,
    text_digest,
)
from chamberwise.engine.translating.standing import Standing, counted, standings
from chamberwise.tui.command.finding_files import shipped
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.engine.local.stage import PATHWAY, below
from tests.support.thorough import THOROUGH

VITRECTOMY = "anterior-vitrectomy"


@cache
def library() -> Loaded:
    return load_library(shipped())


def file_of(of: str, *said: tuple[Pointer, str, str]) -> TranslationFile:
    """Return a translation: of each text its place, its source and what it says."""
    return TranslationFile(
        of,
        "de",
        tuple(
            TranslatedText(at, text_digest(source), says, ("texts", number))
            for number, (at, source, says) in enumerate(said)
        ),
    )


def test_every_text_that_checks_read_can_be_translated() -> None:
    for pathway in library().library.pathways.values():
        found = segments_of(pathway)
        assert {each.pointer: each.words for each in texts(pathway)}.items() <= found.items()
        assert all(found.values())
    shared = library().library.shared
    assert {each.pointer for each in of_words(shared)} == segments_of(shared).keys()


def test_said_as_it_was_nothing_changes() -> None:
    for pathway in library().library.pathways.values():
        assert retold_pathway(pathway, lambda _, text: text) == pathway
    shared = library().library.shared
    assert retold_words(shared, lambda _, text: text) == shared


def test_a_digest_is_of_the_words_alone() -> None:
    assert text_digest("Hold the tip\n  still.") == text_digest("Hold the tip still.")
    assert text_digest("Hold the tip still.") != text_digest("Hold the tip still")


def test_each_text_stands_in_one_of_four_ways() -> None:
    segments = {("a",): "Wait.", ("b",): "Stop.", ("c",): "Never pull.", ("d",): "Close."}
    file = file_of(
        "x",
        (("a",), "Wait.", "Warten."),
        (("b",), "Halt.", "Anhalten."),
        (("c",), "Never pull.", "Ziehen."),
        (("d",), "Close.", ""),
    )
    stood = standings(segments, file.texts, "de")
    assert [each.standing for each in stood.values()] == [
        Standing.TRANSLATED,
        Standing.STALE,
        Standing.DOUBTFUL,
        Standing.MISSING,
    ]
    assert counted(stood.values()).total() == 4


def test_a_doubt_accepted_with_a_reason_is_settled_but_never_one_of_a_dose() -> None:
    segments = {("a",): "Never pull.", ("b",): "Give 5 mg."}
    file = file_of("x", (("a",), "Never pull.", "Ziehen."), (("b",), "Give 5 mg.", "6 mg geben."))
    settled = [replace(each, accepted="A reason.") for each in file.texts]
    stood = standings(segments, settled, "de")
    assert [each.standing for each in stood.values()] == [Standing.TRANSLATED, Standing.DOUBTFUL]


def test_of_two_translations_the_one_made_of_this_text_is_taken() -> None:
    unit = file_of("x", (("a",), "Halt.", "Halt der Abteilung."))
    came_along = file_of("x", (("a",), "Stop.", "Anhalten."))
    stood = standings({("a",): "Stop."}, [*unit.texts, *came_along.texts], "de")
    found = stood[("a",)]
    assert found.text
    assert (found.standing, found.text.says) == (Standing.TRANSLATED, "Anhalten.")


def test_what_has_no_translation_stands_in_english_behind_a_mark() -> None:
    base = below()
    title = base.library.pathways[PATHWAY].title
    told = translated(base, "de", [file_of(PATHWAY, (("title",), title, "Undichter Schnitt"))])
    pathway, was = told.library.pathways[PATHWAY], base.library.pathways[PATHWAY]
    assert pathway.title == "Undichter Schnitt"
    assert pathway.summary == f"{MARK} {was.summary}"
    found = told.library.translation
    assert found
    assert found.texts[PATHWAY] == found.in_english[PATHWAY] + 1
    assert not found.approved


def test_a_changed_source_takes_its_translation_away() -> None:
    base = below()
    old = file_of(PATHWAY, (("title",), "What it was called once", "Undichter Schnitt"))
    told = translated(base, "de", [old])
    title = base.library.pathways[PATHWAY].title
    assert told.library.pathways[PATHWAY].title == f"{MARK} {title}"


def test_nothing_translated_counts_as_approved() -> None:
    base = below()
    pathways = {
        name: replace(each, status=Status.APPROVED, approved_by="Clinical lead")
        for name, each in base.library.pathways.items()
    }
    approved = replace(base, library=type(base.library)(base.library.shared, pathways))
    told = translated(approved, "de", [])
    assert approved.library.pathways[PATHWAY].is_approved
    assert not told.library.pathways[PATHWAY].is_approved
    assert told.fallen[PATHWAY] == ("translation",)


def test_files_digests_and_approved_content_stay_those_of_the_source() -> None:
    base = below()
    told = translated(base, "de", [])
    assert told.files is base.files
    assert digest(told, PATHWAY) == digest(base, PATHWAY)
    assert told.written is base.library
    assert content_digest(told.library, PATHWAY) != content_digest(base.library, PATHWAY)


@settings(max_examples=50 if THOROUGH else 5, deadline=None)
@given(st.randoms(use_true_random=False), st.sampled_from(("", "x", "Ein Wort", "{nichts}")))
def test_no_verdict_changes_whatever_the_texts_say(random: object, word: str) -> None:
    base = below()
    every = originals(base.library)
    choose = random.random
    files = [
        file_of(
            name,
            *((at, text, f"{word} {number}") for number, (at, text) in enumerate(own.items())
              if choose() < 0.5),
        )
        for name, own in every.items()
    ]  # fmt: skip
    told = translated(base, "de", files).library
    for name in base.library.pathways:
        proof, anew = prove(base.library, name), prove(told, name)
        assert [type(each) for each in proof.verdicts] == [type(each) for each in anew.verdicts]
        assert proof.states == anew.states
        assert retold_proof(proof, told).verdicts == anew.verdicts
        assert begin(base.library, name) == begin(told, name)


def test_the_german_that_comes_along_is_of_this_library() -> None:
    names = set(originals(library().library))
    stood = stands(library(), "de", [])
    assert stood.keys() == names
    assert VOCABULARY in names


def test_an_unknown_pathway_in_a_file_changes_nothing() -> None:
    told = translated(below(), "de", [file_of("gone", (("title",), "A", "B"))])
    empty = translated(below(), "de", [])
    assert told.library.pathways == empty.library.pathways


@pytest.mark.parametrize("name", sorted(library().library.pathways))
def test_what_is_used_of_the_shared_words_is_counted(name: str) -> None:
    told = translated(library(), "de", []).library.translation
    assert told
    own = len(segments_of(library().library.pathways[name]))
    assert own < told.texts[name] == told.in_english[name]
