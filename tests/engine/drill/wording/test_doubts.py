"""What is asked however near it comes, what is left aside, and words spelt by ear (derived)."""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.around import said_around
from chamberwise.engine.drill.wording.clauses import Kind, clauses_of
from chamberwise.engine.drill.wording.matching import understand
from chamberwise.engine.drill.wording.phrasebook import Phrasebook, Target, phrasebook_of
from chamberwise.engine.drill.wording.understood import Understood

from tests.engine.drill.stage import RUPTURE, scenario, typed

BOOK: Phrasebook = phrasebook_of(scenario())


def meant(line: str) -> Understood:
    return understand(BOOK, line)


@pytest.mark.parametrize(
    ("line", "act"),
    [
        ("if the chamber is full take the tip out", "withdraw-tip"),
        ("take the tip out unless it shallows", "withdraw-tip"),
        ("take the tip out with the banana", "withdraw-tip"),
        ("let the vitreoretinal senior come and help", "call-for-help"),
    ],
)
def test_a_condition_and_words_left_over_are_asked_about(line: str, act: str) -> None:
    understood = meant(line)
    assert (understood.taken, understood.first) == ((), ())
    assert Target(act=act) in understood.asked


@pytest.mark.parametrize(
    "line",
    [
        "no lens yet",
        "I wouldn't put the single piece in the sulcus",
        "I'm not going to press on the eye",
        "hold off the sponge",
        "before I take the tip out",
        "nobody should rotate the nucleus",
        "pulling at the vitreous would be dangerous",
        "the worst thing is to burp the wound",
    ],
)
def test_what_is_put_off_denied_or_warned_of_is_not_done(line: str) -> None:
    understood = meant(line)
    assert (understood.taken, understood.first) == ((), ())


@pytest.mark.parametrize(
    "reason",
    [
        "because if I pull it out the chamber collapses",
        "since taking the tip out now brings vitreous forward",
        "as the vitreous comes forward otherwise",
        "so that the chamber stays full, and nothing falls",
        "otherwise I press on the eye",
    ],
)
def test_a_reason_names_acts_that_nobody_does(reason: str) -> None:
    assert meant(f"hold the tip still {reason}").taken == (Target(act="hold-tip-still"),)


def test_what_is_so_already_is_no_act_of_the_line() -> None:
    kinds = [each.kind for each in clauses_of("the eye is hard so I lower the infusion")]
    assert kinds == [Kind.GIVEN, Kind.DONE]


@pytest.mark.parametrize(
    ("line", "act"),
    [
        ("enlarge the insision", "enlarge-main-wound"),
        ("take the fako tip out", "withdraw-tip"),
        ("inject acetylcoline", "inject-miotic"),
        ("stain with triamsinolone", "stain-with-triamcinolone"),
        ("leave the eye afakic", "leave-aphakic"),
        ("fill wiht viscoelastik", "fill-with-dispersive-viscoelastic"),
    ],
)
def test_words_spelt_by_ear_are_heard(line: str, act: str) -> None:
    understood = meant(line)
    assert Target(act=act) in (*understood.taken, *understood.asked[:1])


@pytest.mark.parametrize("line", ["the filling station", "a fine place", "wait a minute"])
def test_everyday_words_are_no_slips_of_others(line: str) -> None:
    assert BOOK.words(line) == line.split()


def test_what_belongs_here_is_offered_first_and_never_taken_for_it() -> None:
    line = "have a look at the wound edge"
    plain = meant(line)
    last = plain.asked[1]
    moved = understand(BOOK, line, frozenset({last}))
    assert plain.taken == moved.taken == ()
    assert moved.asked.index(last) < plain.asked.index(last)


def test_around_the_first_step_are_its_acts_and_the_next_ones() -> None:
    drill = typed(scenario("fifth-of-six"), ())
    around = said_around(drill.scenario, drill.standing)
    first = drill.scenario.library.pathways[RUPTURE].steps
    assert Target(act="hold-tip-still") in around
    assert Target(act="hydrate-side-ports") not in around
    assert len(around) < len(first)
