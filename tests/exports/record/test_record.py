from __future__ import annotations

import json
import re
from dataclasses import replace
from datetime import date, timedelta, timezone
from pathlib import Path

import pytest
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.engine.model.library import Library
from chamberwise.engine.walk.walk import Walk, fold, make, note, redo, resumed, set_out, undo
from chamberwise.exports.record.bare import bare_record
from chamberwise.exports.record.content import EntryKind, RecordContent
from chamberwise.exports.record.extract import record_of
from chamberwise.exports.record.machine import record_json
from chamberwise.exports.record.save import NotSavedError, save_record
from chamberwise.exports.record.standing import STANDING
from chamberwise.exports.record.text import record_text

from tests.tui.golden import assert_as_kept
from tests.tui.stage import MORNING, TODAY, Ticking, walked

KEPT = Path(__file__).parent / "kept"
WHOLE = ("fast", "done", "sore", "done", "done", "calm", "done", "none")


def corrected() -> Walk:
    """A walk with a wrong turn taken back, a note, and an interruption."""
    clock = Ticking(timedelta(seconds=20))
    clock.now = MORNING + timedelta(minutes=1)
    walk = make(walked(), Answered("slow"), clock())
    walk = undo(walk, clock())
    walk = make(walk, Answered("fast"), clock())
    walk = make(walk, Done(), clock())
    walk = undo(walk, clock())
    walk = redo(walk, clock())
    walk = note(walk, "pupil small", clock())
    return resumed(walk, clock())


def test_the_whole_record_as_text() -> None:
    assert_as_kept(KEPT / "whole.txt", record_text(record_of(walked(WHOLE), TODAY)))
    assert_as_kept(KEPT / "corrected.txt", record_text(record_of(corrected(), TODAY)))


def test_the_whole_record_as_json() -> None:
    assert_as_kept(KEPT / "whole.json", record_json(record_of(walked(WHOLE), TODAY)))


def test_the_same_walk_gives_the_same_bytes() -> None:
    first, second = record_of(walked(WHOLE), TODAY), record_of(walked(WHOLE), TODAY)
    assert record_text(first) == record_text(second)
    assert record_json(first) == record_json(second)


def test_moves_taken_back_are_kept_and_marked() -> None:
    entries = record_of(corrected(), TODAY).entries
    assert [(entry.kind, entry.stands) for entry in entries] == [
        (EntryKind.ANSWERED, False),
        (EntryKind.TAKEN_BACK, True),
        (EntryKind.ANSWERED, True),
        (EntryKind.DONE, True),
        (EntryKind.TAKEN_BACK, True),
        (EntryKind.MADE_AGAIN, True),
        (EntryKind.NOTE, True),
        (EntryKind.RESUMED, True),
    ]


def test_what_went_stale_and_why_it_was_asked_again() -> None:
    entries = record_of(walked(WHOLE), TODAY).entries
    assert entries[6].went_stale == ("Leak", "Patient comfort")
    assert entries[7].asked_again.startswith("Asked again: “Hydrate the wound”")


def test_what_is_owed_is_a_list_to_tick_with_that_of_passed_outcomes() -> None:
    text = record_text(record_of(walked(WHOLE), TODAY))
    assert re.findall(r"^  \[ \] (.*?):", text, re.MULTILINE) == [
        "Circulating practitioner",
        "Surgeon",
        "Surgeon",
    ]


@pytest.mark.parametrize("typed", [(), ("fast",), WHOLE])
def test_it_says_what_it_is_for_and_how_far_it_is_approved(typed: tuple[str, ...]) -> None:
    text = record_text(record_of(walked(typed), TODAY))
    assert text.startswith(f"{STANDING}\n")
    assert text.endswith(f"{STANDING}\n")
    assert "Status:   DRAFT\n" in text
    assert "DRAFT, EXPIRED" in record_text(record_of(walked(typed), date(2028, 1, 1)))


def test_the_choices_are_listed_with_what_the_unit_has_set() -> None:
    walk = walked(("fast", "done"))
    pathway = walk.library.pathways["leaking-wound"]
    finding = pathway.words.findings["air-or-fluid"]
    assert finding.choice
    chosen = replace(finding, choice=replace(finding.choice, chosen="air"))
    words = replace(pathway.words, findings={**pathway.words.findings, finding.id: chosen})
    own = {**walk.library.pathways, pathway.id: replace(pathway, words=words)}
    local = fold(Library(walk.library.shared, own), walk.journal)
    assert "  - NOT SET LOCALLY: Filling the chamber\n" in record_text(record_of(walk, TODAY))
    text = record_text(record_of(local, TODAY))
    assert text.count("Filling the chamber: Air (set by this unit)\n") == 2
    assert "NOT SET LOCALLY" not in text


def test_times_are_of_one_zone_told_once() -> None:
    began = MORNING.astimezone(timezone(timedelta(hours=1)))
    walk = make(set_out(walked().library, "leaking-wound", "", began), Answered("fast"), MORNING)
    text = record_text(record_of(walk, TODAY))
    assert "Times:    local, UTC+01:00\n" in text
    assert "\n10:00:00, 0:00 into the walk  1. " in text


def test_lines_fit_a_page() -> None:
    for walk in (walked(WHOLE), corrected()):
        lines = record_text(record_of(walk, TODAY)).split("\n")
        assert all(len(line) <= 78 for line in lines)
        assert all(line == line.rstrip() for line in lines)


def test_every_source_shown_has_its_mark() -> None:
    sources = record_of(walked(WHOLE), TODAY).sources
    assert len(sources) == len(set(sources)) > 1
    assert all(source.mark for source in sources)


def test_a_journal_without_its_pathway_still_makes_a_record() -> None:
    record = bare_record(corrected().journal)
    text = record_text(record)
    assert "Answered: slow" in text
    assert "PATHWAY CHANGED SINCE" in text
    assert record.owed == ()
    json.loads(record_json(record))


def record() -> RecordContent:
    return record_of(walked(("fast",)), TODAY)


def test_the_ending_chooses_the_form(tmp_path: Path) -> None:
    save_record(record(), tmp_path / "walk.TXT")
    save_record(record(), tmp_path / "walk.json")
    assert (tmp_path / "walk.TXT").read_text(encoding="utf-8") == record_text(record())
    assert json.loads((tmp_path / "walk.json").read_text(encoding="utf-8"))["format"] == 1


@pytest.mark.parametrize("name", ["walk.pdf", "walk", "file/walk.txt", "folder.txt"])
def test_what_cannot_be_written_is_said_and_leaves_nothing(tmp_path: Path, name: str) -> None:
    (tmp_path / "file").write_text("")
    (tmp_path / "folder.txt").mkdir()
    before = sorted(tmp_path.rglob("*"))
    with pytest.raises(NotSavedError):
        save_record(record(), tmp_path / name)
    assert sorted(tmp_path.rglob("*")) == before
