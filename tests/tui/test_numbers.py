"""Several of what was offered are chosen by their numbers, in the order they are typed."""

from __future__ import annotations

from chamberwise.engine.drill.entries import Did, Mode, NotUnderstood
from chamberwise.tui.line.drill_script import HandSetClock
from chamberwise.tui.rehearsal import LEFT_OPEN, ONE_ONLY, Rehearsal
from chamberwise.tui.rehearsing import rehearse, scenario_of

from tests.engine.drill.stage import ON, RUPTURE, shipped

ASKED = "dispersive underneath the quadrants"


def rehearsal() -> tuple[Rehearsal, HandSetClock]:
    loaded, drills = shipped()
    clock = HandSetClock()
    scenario = scenario_of(loaded, drills, RUPTURE, 7, "fifth-of-six")
    found = rehearse(loaded, drills, scenario, Mode.REHEARSE, ON, clock, None)
    clock.set((scenario.first_cue + 1) * 1000)
    found.hear("hold still")
    return found, clock


def acts(of: Rehearsal) -> list[str]:
    return [each.act for each in of.drill.journal if isinstance(each, Did)][1:]


def test_two_numbers_are_two_acts_in_their_order() -> None:
    found, _clock = rehearsal()
    found.hear(ASKED)
    offered = [each.target.act for each in found.options if each.target]
    found.hear("2 1")
    assert acts(found) == [offered[1], offered[0]]
    assert found.options == ()


def test_none_of_these_goes_with_no_other_number() -> None:
    found, _clock = rehearsal()
    found.hear(ASKED)
    assert [part.text for part in found.hear("0 1")] == [ONE_ONLY]
    assert acts(found) == []
    found.hear("0")
    assert isinstance(found.drill.journal[-1], NotUnderstood)


def test_a_menu_of_help_takes_one_number_alone() -> None:
    found, _clock = rehearsal()
    found.hear("pcr")
    found.hear("?")
    found.hear("?")
    before = len(acts(found))
    assert [part.text for part in found.hear("1 2")] == [ONE_ONLY]
    assert len(acts(found)) == before


def test_what_was_asked_about_and_left_open_is_told_and_kept_once() -> None:
    found, clock = rehearsal()
    found.hear(ASKED)
    clock.set(clock.now + 2000)
    said = [part.text for part in found.hear("stop")]
    assert LEFT_OPEN.format(typed=ASKED) in said
    assert acts(found) == ["stop-aspiration"]
    left = [each.typed for each in found.drill.journal if isinstance(each, NotUnderstood)]
    assert left == [ASKED]
    assert LEFT_OPEN.format(typed=ASKED) not in [part.text for part in found.hear("stop")]


def test_of_a_line_half_settled_the_other_half_alone_is_left_open() -> None:
    found, _clock = rehearsal()
    found.hear("capsule open, dispersive underneath the quadrants")
    assert found.options
    said = [part.text for part in found.hear("stop")]
    assert LEFT_OPEN.format(typed=ASKED) in said
    lost = [each.typed for each in found.drill.journal if isinstance(each, NotUnderstood)]
    assert lost == [ASKED]
