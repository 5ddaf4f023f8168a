"""Drills in another language: what is read is told anew, what is typed and drawn stays as it was.

Derived: a translation must change no truth, no draw, no way of saying anything and no order.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from chamberwise.engine.drill.entries import Did, Looked, Recognised
from chamberwise.engine.drill.fold import as_run
from chamberwise.engine.drill.measures.measured import measure
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.reading.drills import Drills, read_drills
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile
from chamberwise.engine.translating.applying import translated
from chamberwise.engine.translating.doubts import MARK
from chamberwise.engine.translating.drill_texts import (
    TRUTH,
    drill_originals,
    of_book,
    translated_drills,
)
from chamberwise.engine.translating.finding import read_translations, whole_ones
from chamberwise.engine.translating.segments import text_digest
from chamberwise.tui.command.finding_files import shipped
from chamberwise.tui.rehearsing import scenario_of

from tests.engine.drill.stage import RUPTURE, scenario, typed
from tests.engine.drill.stage import shipped as shipped_drills

LINES = ("stop", "hold still", "pcr", "pull the tip out", "where is the vitreous", "box please")


def german(seed: int) -> Scenario:
    loaded, drills = shipped_drills()
    files = whole_ones(read_translations(shipped(), "de"))
    told = translated_drills(drills, "de", files)
    return scenario_of(translated(loaded, "de", files), told, RUPTURE, seed)


def one(drills: Drills, of: str, at: str, says: str, source: str | None = None) -> Drills:
    """Return drills with one text translated, of the source that stands there or another."""
    segments = drill_originals(drills)[of]
    place = next(each for each in segments if " / ".join(map(str, each)) == at)
    text = TranslatedText(place, text_digest(source or segments[place]), says, ("texts", 0))
    return translated_drills(drills, "de", [TranslationFile(of, "de", (text,))])


def test_the_same_seed_is_the_same_drill_and_the_same_words_are_understood() -> None:
    for seed in (3, 11, 18):
        english, other = scenario(None, seed), german(seed)
        assert (english.truth, english.opening.id) == (other.truth, other.opening.id)
        assert [each.id for each in english.injects] == [each.id for each in other.injects]
        assert not {english.cue, *english.brief} & {other.cue, *other.brief}
        one_run, other_run = typed(english, LINES), typed(other, LINES)
        kinds = (Did, Looked, Recognised)
        said = [
            [
                (type(each), getattr(each, "act", ""), getattr(each, "saw", ""), each.at)
                for each in drill.journal
                if isinstance(each, kinds)
            ]
            for drill in (one_run, other_run)
        ]
        assert said[0] == said[1]
        assert len(said[0]) > len(LINES)
        measured = [
            measure(drill.scenario.library, as_run(drill)) for drill in (one_run, other_run)
        ]
        results = [(m.gates.result, [h.event.entry.at for h in m.harms]) for m in measured]
        assert results[0] == results[1]


def test_consequences_and_lessons_come_in_the_language_too() -> None:
    drill = typed(german(11), LINES)
    assert [each.act for each in drill.standing.consequences] == ["withdraw-tip"]
    assert drill.standing.consequences[0].lesson.startswith("Die Spitze war der Stopfen")


def test_what_has_no_translation_stands_in_english_behind_the_mark() -> None:
    told = one(read_drills(shipped()), of_book(RUPTURE), "is", "Die Hinterkapsel ist offen")
    book = told.books[RUPTURE]
    assert book.what_it_is == "Die Hinterkapsel ist offen"
    assert all(each.startswith(MARK) for each in (*book.decoys, *book.reader))
    lacking, texts = told.in_english[RUPTURE]
    assert lacking == texts - 1


def test_a_translation_of_another_text_is_stale_and_not_shown() -> None:
    drills = read_drills(shipped())
    told = one(drills, of_book(RUPTURE), "is", "Die Hinterkapsel ist offen", "Something else")
    assert told.books[RUPTURE].what_it_is == f"{MARK} The back capsule is open"


def test_what_turns_a_prohibition_round_is_not_shown() -> None:
    at = "in truth / withdraw-tip / otherwise"
    source = drill_originals(read_drills(shipped()))[TRUTH]
    assert source["in truth", "withdraw-tip", "otherwise"] == "Every wound is empty already."
    told = one(read_drills(shipped()), TRUTH, at, "Kein Schnitt ist leer.")
    assert told.truth.in_truth["withdraw-tip"].otherwise == f"{MARK} Every wound is empty already."


def test_words_that_are_typed_are_never_translated() -> None:
    drills = read_drills(shipped())
    every = {text for each in drill_originals(drills).values() for text in each.values()}
    for book in drills.books.values():
        said = {text for each in book.injects for reply in each.replies for text in reply.said_as}
        assert not every & (said | set(book.triggers))


@pytest.mark.parametrize("name", [RUPTURE, "dropped-nucleus"])
def test_every_text_that_is_read_can_be_translated(name: str) -> None:
    """Each text said anew in capitals leaves no small one where people read."""
    drills = read_drills(shipped())
    files = [
        TranslationFile(
            of,
            "de",
            tuple(
                TranslatedText(at, text_digest(text), f"~{text}", ("texts", n))
                for n, (at, text) in enumerate(segments.items())
            ),
        )
        for of, segments in drill_originals(drills).items()
    ]
    told = translated_drills(drills, "de", files)
    book = told.books[name]
    texts = [
        *book.could_be,
        *book.decoys,
        *book.reader,
        *(text for each in book.brief.values() for text in each),
        *(text for each in book.openings for text in (*each.cues, each.so_far)),
        *(title for each in book.openings for _act, title in each.calls),
        *(text for each in book.injects for text in (each.title, each.shows)),
        *(text for each in book.scenarios for text in (*each.brief, *each.cues, each.title)),
        *(each.why for each in book.critical),
        *(each.text for each in book.tasks),
        *(harm.why for harm in told.truth.harms.values()),
    ]
    assert [text for text in texts if not text.startswith(("~", f"{MARK} "))] == []
    assert replace(told, books=drills.books, truth=drills.truth).files == drills.files
