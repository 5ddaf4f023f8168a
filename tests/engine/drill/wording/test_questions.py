"""A question tells nobody what this is, and no act is done because somebody asked whether to.

That the trigger has to be said aloud, and is timed to when it is said, is from the evidence notes
of the drill; that a question is told apart from it is derived.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.entries import Certainty, Did, Recognised, Wondered
from chamberwise.engine.drill.fold import as_run
from chamberwise.engine.drill.measures.times import recognition
from chamberwise.engine.drill.taking import Typed, take
from chamberwise.engine.drill.wording.matching import understand
from chamberwise.engine.drill.wording.phrasebook import Target, phrasebook_of

from tests.engine.drill.stage import scenario, typed

BOOK = phrasebook_of(scenario())
ANNOUNCE = Target(act="announce-rupture")


@pytest.mark.parametrize(
    "asked",
    [
        "has the capsule gone?",
        "Has the capsule gone",
        "is that a rupture",
        "the capsule has gone?",
        "could this be a PCR",
        "hang on, is the capsule open?",
        "do we have a posterior capsule rupture?",
    ],
)
def test_to_ask_whether_it_is_so_is_not_to_say_it(asked: str) -> None:
    meant = understand(BOOK, asked)
    assert (meant.asks_trigger, meant.says_trigger) == (True, False)
    assert ANNOUNCE not in (*meant.taken, *meant.asked, *meant.first)


@pytest.mark.parametrize(
    "said",
    [
        "the capsule has gone",
        "the capsule has gone!",
        "I think the capsule has gone",
        "the capsule has gone, hasn't it?",
        "has it gone? yes, the capsule is open",
        "capsule rupture! can you get the box?",
    ],
)
def test_what_is_said_is_said_whatever_stands_beside_it(said: str) -> None:
    assert understand(BOOK, said).says_trigger


@pytest.mark.parametrize(
    ("asked", "act"),
    [
        ("should I take the tip out?", "withdraw-tip"),
        ("can we withdraw the tip", "withdraw-tip"),
        ("take the tip out?", "withdraw-tip"),
        ("shall I fill the chamber with viscoelastic", "fill-with-dispersive-viscoelastic"),
        ("is it safe to take the tip out", "withdraw-tip"),
    ],
)
def test_what_is_asked_about_is_done_only_after_a_yes(asked: str, act: str) -> None:
    meant = understand(BOOK, asked)
    assert meant.taken == ()
    assert Target(act=act) in meant.asked


@pytest.mark.parametrize(
    ("typed_", "act"),
    [
        ("can you get the box?", "fetch-box"),
        ("could somebody call the consultant?", "call-for-help"),
        ("who operates?", "agree-who-operates"),
        ("call the consultant please?", "call-for-help"),
    ],
)
def test_a_request_in_the_form_of_a_question_is_a_request(typed_: str, act: str) -> None:
    assert understand(BOOK, typed_).taken == (Target(act=act),)


def test_recognition_is_timed_to_when_it_was_said_and_the_asking_is_kept() -> None:
    drill = typed(scenario("fifth-of-six"), [(8, "has the capsule gone?")])
    assert [
        type(each) for each in drill.journal if isinstance(each, Wondered | Recognised | Did)
    ] == [Wondered]
    drill = typed(
        scenario("fifth-of-six"), [(8, "has the capsule gone?"), (14, "the capsule is open")]
    )
    found = recognition(as_run(drill))
    assert found is not None
    assert (found.seconds, found.happened) == (14.0, True)


def test_a_mark_is_told_back() -> None:
    of = scenario("fifth-of-six")
    drill = typed(of, ())
    taken = take(drill, Typed("hold still /sure", drill.stands[-1][1].at + 1000))
    assert taken.said == ("Done: Hold the tip still in the eye. Marked: sure.",)
    done = taken.drill.journal[-1]
    assert isinstance(done, Did)
    assert done.certainty is Certainty.SURE
    taken = take(taken.drill, Typed("stop aspirating!", done.at + 1000))
    assert taken.said == ("Done: Stop aspiration and ultrasound.",)
