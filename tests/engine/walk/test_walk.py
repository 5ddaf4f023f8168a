"""A walk by hand: what it says of where it stands and of what went stale."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from chamberwise.engine.meaning.advance import IllegalMoveError
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Answered, Done, Move
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.walk.walk import (
    Walk,
    fields_in_play,
    made_stale_by,
    make,
    note,
    resumed,
    set_out,
    undo,
)

from tests.support.build import (
    ask,
    branch,
    do,
    end,
    finding,
    hand_over,
    library,
    pathway,
    row,
)

NOW = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)


@pytest.fixture
def wound() -> Library:
    one = pathway(
        "one",
        ask("look", "wound", dry="hold", leaking="press"),
        do("press", "again", stale="wound"),
        ask("again", "wound", dry="hold", leaking="press"),
        do("hold", "over"),
        hand_over("over", "two", done="close"),
        end("close"),
    )
    two = pathway(
        "two", do("rinse", "done", stale="wound"), end("done"), findings=[finding("own", "yes no")]
    )
    return library(one, two, findings=[finding("wound", "dry leaking"), finding("lid", "up down")])


def walked(library: Library, *moves: Move) -> Walk:
    walk = set_out(library, "one", "", NOW)
    for number, move in enumerate(moves, 1):
        walk = make(walk, move, NOW + timedelta(minutes=number))
    return walk


def stale_by(walk: Walk) -> Place | None:
    found = made_stale_by(walk, layout_of(walk.library).field("one", "wound"))
    return found[1] if found else None


def test_what_made_a_finding_stale_is_the_last_action_that_did(wound: Library) -> None:
    assert stale_by(walked(wound)) is None
    assert stale_by(walked(wound, Answered("leaking"))) is None
    assert stale_by(walked(wound, Answered("leaking"), Done())) == Place("one", "press")
    twice = walked(wound, Answered("leaking"), Done(), Answered("leaking"), Done())
    assert stale_by(twice) == Place("one", "press")
    assert stale_by(walked(wound, Answered("leaking"), Done(), Answered("dry"))) is None


def test_of_two_actions_that_make_a_finding_stale_the_later_one_is_named() -> None:
    one = library(
        pathway(
            "one",
            ask("look", "wound", dry="press", leaking="press"),
            do("press", "rinse", stale="wound"),
            do("rinse", "tell", stale="wound"),
            do("tell", "again"),
            ask("again", "wound", dry="close", leaking="close"),
            end("close"),
        ),
        findings=[finding("wound", "dry leaking")],
    )
    assert stale_by(walked(one, Answered("dry"), Done())) == Place("one", "press")
    assert stale_by(walked(one, Answered("dry"), Done(), Done())) == Place("one", "rinse")
    assert stale_by(walked(one, Answered("dry"), Done(), Done(), Done())) == Place("one", "rinse")


def test_of_a_finding_that_changes_by_itself_the_last_action_since_is_named() -> None:
    one = library(
        pathway(
            "one",
            ask("look", "wound", dry="press", leaking="press"),
            do("press", "tell"),
            do("tell", "again"),
            ask("again", "wound", dry="close", leaking="close"),
            end("close"),
        ),
        findings=[finding("wound", "dry leaking", restless=True)],
    )
    assert stale_by(walked(one, Answered("dry"), Done(), Done())) == Place("one", "tell")


def test_an_action_over_there_is_named_with_its_pathway(wound: Library) -> None:
    walk = walked(wound, Answered("dry"), Done(), Done())
    assert walk.state.place == Place("two", "rinse")
    assert stale_by(make(walk, Done(), NOW)) == Place("two", "rinse")


def test_taken_back_nothing_is_stale(wound: Library) -> None:
    walk = walked(wound, Answered("leaking"), Done())
    assert stale_by(undo(walk, NOW)) is None


def test_findings_in_play_are_those_something_is_known_of(wound: Library) -> None:
    def names(walk: Walk) -> list[str]:
        return [field.finding.id for field in fields_in_play(walk)]

    assert names(walked(wound)) == []
    assert names(walked(wound, Answered("cannot tell"))) == []
    assert names(walked(wound, Answered("leaking"))) == ["wound"]
    assert names(walked(wound, Answered("leaking"), Done())) == ["wound"]
    assert names(walked(wound, Answered("dry"), Done(), Done())) == ["wound"]


def test_a_walk_is_over_at_an_outcome_it_does_not_come_back_from(wound: Library) -> None:
    walk = walked(wound, Answered("dry"), Done(), Done())
    assert not walk.is_over
    walk = make(walk, Done(), NOW)
    assert walk.is_over
    assert not walk.is_stuck
    assert walk.step.id == "close"


def test_a_walk_is_stuck_where_a_branch_cannot_decide() -> None:
    one = library(
        pathway(
            "one", do("hold", "which"), branch("which", row("close", wound="dry")), end("close")
        ),
        findings=[finding("wound", "dry leaking")],
    )
    walk = walked(one, Done())
    assert walk.is_stuck
    assert not walk.is_over


def test_a_walk_is_stuck_where_it_would_go_round_in_silence() -> None:
    one = library(
        pathway("one", ask("look", "wound", dry="look", leaking="close"), end("close")),
        findings=[finding("wound", "dry leaking")],
    )
    assert walked(one, Answered("dry")).is_stuck
    assert not walked(one, Answered("cannot tell")).is_stuck


def test_a_refused_move_changes_nothing(wound: Library) -> None:
    walk = walked(wound)
    with pytest.raises(IllegalMoveError):
        make(walk, Done(), NOW)
    with pytest.raises(IllegalMoveError):
        make(walk, Answered("wet"), NOW)
    assert walk == walked(wound)


def test_times_are_those_passed_in(wound: Library) -> None:
    walk = walked(wound, Answered("leaking"), Done())
    assert walk.since == NOW + timedelta(minutes=2)
    later = NOW + timedelta(hours=1)
    assert note(resumed(walk, later), "text", later).since == walk.since
    assert undo(walk, later).since == NOW + timedelta(minutes=1)
    assert walked(wound).since == NOW
