"""What a debrief says, and what it never says."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

from chamberwise.engine.drill.debriefing.debrief import debrief
from chamberwise.engine.drill.debriefing.timeline import silences
from chamberwise.engine.drill.entries import Cued, Mode
from chamberwise.exports.debrief.content import STANDING
from chamberwise.exports.debrief.text import debrief_text
from chamberwise.exports.debrief.wording import clock

from tests.conformance.driver import library
from tests.support.by_the_book import doings, drilled, moved, without
from tests.support.debriefed import by_the_book, content, eventful

TOP = Path(__file__).parents[3]


def test_the_harm_is_named_first_with_its_time_and_the_right_way() -> None:
    found = content(eventful())
    harm, critical, time = found.gates
    assert harm.stands == critical.stands == "not yet"
    assert harm.because[0].startswith("0:21 Withdraw the tip")
    assert "Fill the chamber with dispersive viscoelastic" in harm.because[0]
    assert critical.because == ("Left out: Fetch the rupture box",)
    assert time.stands == "not looked at before A and B are open"


def test_a_pathway_that_nobody_approved_says_so() -> None:
    assert content(eventful()).head[0] == ("Status", "DRAFT: not approved for clinical use")


def test_at_most_three_things_to_talk_about_and_one_of_them_good() -> None:
    found = content(eventful())
    assert len(found.talking) == 3
    assert found.talking[-1].startswith("Well done: ")


def test_a_sure_error_stands_before_everything_else_there_is_to_talk_about() -> None:
    found = content(eventful())
    assert found.sure_and_wrong == ("0:21 Withdraw the tip",)
    text = debrief_text(found)
    assert text.index("SURE, AND NOT SO") < text.index("TO TALK ABOUT")


def test_the_first_departure_has_what_was_shown_done_said_and_the_source() -> None:
    first = content(eventful()).first_departure
    assert first is not None
    assert first.shown == "The chamber deepens."
    assert first.done == "0:21 Fetch the rupture box: left out, before “withdraw the tip”"
    assert first.line == "Circulating practitioner does: Fetch the rupture box."
    assert first.sources
    assert all(source.endswith("]") for source in first.sources)


def test_what_an_act_led_to_was_not_what_was_shown_before_it() -> None:
    script = moved(list(doings()[:16]), "withdraw-tip", "fill-with-dispersive-viscoelastic")
    run = drilled(script)
    pulled = next(each for each in run.events if getattr(each.entry, "act", "") == "withdraw-tip")
    flat = Cued(pulled.entry.at, "The chamber goes flat.")
    place = pulled.number + 1
    entries = (*run.entries[:place], flat, *run.entries[place:])
    first = content(replace(run, journal=entries, entries=entries)).first_departure
    assert first is not None
    assert (first.done[:4], first.shown) == ("0:09", "The chamber deepens.")


def test_a_departure_that_is_the_harm_is_talked_about_once() -> None:
    script = moved(list(doings()[:16]), "withdraw-tip", "fill-with-dispersive-viscoelastic")
    found = content(drilled(script))
    assert found.first_departure is not None
    assert len([each for each in found.talking if "Withdraw the tip" in each]) == 1


def test_what_came_of_it_and_what_the_system_owes_stand_apart_from_people() -> None:
    found = content(eventful())
    assert "vitreous comes to the wound" in found.chain[0]
    assert found.system == (
        "0:30 The vitrector pack is missing.",
        "0:33 not understood by this program: “put the thing in”",
    )
    assert "Owner: ____" in debrief_text(found)


def test_silences_over_eight_seconds_are_told_and_shorter_ones_are_not() -> None:
    found = silences(drilled(["2 hold-tip-still", "10 stop-aspiration", "19 set-pedal"]))
    assert [(each.since, each.until) for each in found] == [(10_000, 19_000)]
    assert content(eventful()).silences


def test_a_faultless_run_asks_what_was_hard_and_keeps_what_was_good() -> None:
    found = content(by_the_book())
    assert found.result == "met in this run"
    assert (found.first_departure, found.departures, found.chain) == (None, (), ())
    assert len(found.questions) == 2
    assert found.take_away.startswith("Keep it so")


def test_both_questions_are_open() -> None:
    for run in (eventful(), by_the_book()):
        for question in content(run).questions:
            assert question.endswith("?")
            last = re.split(r"[.:!”] ", question)[-1]
            assert last.split()[0] in {"What", "Which", "How"}, question


def test_a_rehearsal_says_that_it_does_not_count() -> None:
    run = eventful()
    rehearsed = replace(run, began=replace(run.began, mode=Mode.REHEARSE))
    assert "does not count" in content(rehearsed).result


def test_late_is_told_only_when_nothing_worse_is() -> None:
    script = [f"{place * 2} {doing}" for place, doing in enumerate(doings()[:16])]
    late = [*without(script, "10 call-for-help"), "50 call-for-help"]
    found = content(drilled(late))
    assert found.result == "done, late"
    assert found.gates[2].because == ("Call the senior surgeon: 50 s, local target 45 s",)


def test_nothing_is_wider_than_a_screen_and_nothing_ranks_or_certifies() -> None:
    for run in (eventful(), by_the_book()):
        text = debrief_text(content(run))
        assert max(map(len, text.splitlines())) <= 78
        assert STANDING.split(".")[0] in text
        assert not re.search(r"competen|score|rank(?!s anybody)|\d+ ?%(?! limits)", text)


def test_two_programs_say_the_same_to_the_byte() -> None:
    program = (
        "from tests.support.debriefed import content, eventful\n"
        "from chamberwise.exports.debrief.text import debrief_text\n"
        "print(debrief_text(content(eventful())))"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", program],
            cwd=TOP,
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("0", "1")
    }
    assert len(said) == 1
    assert debrief_text(content(eventful())).encode() + b"\n" in said


def test_a_debrief_needs_no_due_date() -> None:
    assert debrief(library(), eventful()).next_due is None


def test_what_was_done_at_another_place_is_never_told_as_never_done() -> None:
    run = drilled(without(list(doings()[:16]), "fill-with-dispersive-viscoelastic"))
    first = content(run).first_departure
    filled = next(each for each in run.events if "fill" in getattr(each.entry, "act", ""))
    assert first is not None
    assert first.done.endswith(
        "Fill the chamber with dispersive viscoelastic: left out here, "
        f"before “lay dispersive viscoelastic over the tear”; done at {clock(filled.entry.at)}"
    )
    assert "it was left out at that place" in " ".join(content(run).questions)
