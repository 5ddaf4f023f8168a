"""A debrief leads with what matters, names each pair out of order, and parts missed from unreached.

What matters and what is a trifle is derived: critical acts are the book's, with its sources.
"""

from __future__ import annotations

from chamberwise.engine.drill.debriefing.debrief import Debrief, debrief
from chamberwise.engine.drill.entries import Ended, Ending
from chamberwise.engine.drill.fold import add, as_run
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.spacing.grading import grades
from chamberwise.engine.drill.taking import SECOND
from chamberwise.exports.debrief.extract import debrief_content

from tests.engine.drill.stage import scenario, typed
from tests.engine.drill.test_known_faults import FIRST_MINUTE, LOOKS

STEM = ("hold still", "stop aspirating", "the capsule is open", "call the senior surgeon")
GONE_ON = (*STEM, "fill the chamber", "take the tip out")


def ended(lines: tuple[str, ...], how: Ending = Ending.GIVEN_UP, seconds: int = 1) -> Debrief:
    """Return the debrief of a drill that ended so many seconds after its last line."""
    drill = typed(scenario("fifth-of-six"), lines)
    drill = add(drill, Ended(drill.stands[-1][1].at + seconds * SECOND, how))
    return debrief(drill.scenario.library, as_run(drill))


def left_out(of: Debrief) -> set[str]:
    return {each.critical.act for each in of.measured.gates.left_out}


def not_reached(of: Debrief) -> set[str]:
    return {each.critical.act for each in of.measured.gates.not_reached}


def test_a_drill_ended_at_once_has_missed_nothing_and_is_not_met() -> None:
    found = ended(STEM[:2])
    assert left_out(found) == set()
    assert {"announce-rupture", "fetch-box", "lower-infusion"} <= not_reached(found)
    assert found.measured.gates.result is Result.NOT_YET
    assert {act for act, _ in grades(found.measured)} == {"hold-tip-still", "stop-aspiration"}


def test_what_the_run_went_on_without_is_missed_and_what_lay_ahead_is_not() -> None:
    found = ended(GONE_ON)
    assert left_out(found) == {"cover-tear", "fetch-box"}
    assert "lower-infusion" in not_reached(found)


def test_what_its_window_was_over_for_is_missed_however_the_drill_ended() -> None:
    """The windows are the book's local targets: 120 s for the infusion."""
    assert "lower-infusion" not in left_out(ended(GONE_ON, seconds=60))
    assert "lower-infusion" in left_out(ended(GONE_ON, seconds=120))


def test_where_time_was_out_what_had_a_window_is_missed_and_the_rest_was_never_reached() -> None:
    found = ended(STEM[:2], Ending.TIME_OUT, seconds=290)
    assert {"announce-rupture", "fetch-box", "lower-infusion"} <= left_out(found)
    assert "stain-with-triamcinolone" in not_reached(found)


def test_a_drill_that_came_to_its_end_leaves_nothing_unreached() -> None:
    assert not_reached(ended((*FIRST_MINUTE, *LOOKS), Ending.STOP_RULE)) == set()


def test_the_first_departure_told_is_the_first_that_matters() -> None:
    found = ended(GONE_ON)
    real = [each for each in found.measured.departures if not each.is_harmless]
    names = [each.doing.act for each in real if each.doing]
    assert names.index("set-pedal") < names.index("fetch-box")
    assert found.first_departure is not None
    assert found.first_departure.doing is not None
    assert found.first_departure.doing.act == "fetch-box"
    content = debrief_content(scenario("fifth-of-six").library, found)
    assert content.first_title == "First departure that matters"
    assert "Fetch the rupture box" in content.talking[0]
    assert any("Set the foot pedal" in each for each in content.lesser)
    assert not any("Set the foot pedal" in each for each in content.departures)


def test_where_nothing_matters_the_lesser_one_is_told_as_such() -> None:
    lines = tuple(each for each in (*FIRST_MINUTE, *LOOKS) if each != "irrigation only")
    content = debrief_content(scenario("fifth-of-six").library, ended(lines, Ending.STOP_RULE))
    assert content.first_title == "First departure, a lesser one"
    assert content.departures == ()


def test_pairs_out_of_order_are_named() -> None:
    lines = ("hold still", "stop aspirating", "take the tip out", "fill the chamber")
    content = debrief_content(scenario("fifth-of-six").library, ended(lines))
    told = next(each.told for each in content.figures if each.what == "Orders broken")
    assert told.startswith("1 of ")
    assert told.endswith(
        "“fill the chamber with dispersive viscoelastic” belongs before “withdraw the tip”"
    )


def test_a_pair_that_the_book_calls_harmless_counts_in_no_figure() -> None:
    hold, stop, pedal, say, *rest = FIRST_MINUTE
    found = ended((say, hold, stop, pedal, *rest, *LOOKS), Ending.STOP_RULE).measured
    assert [order.then for order in found.orders.swapped] == ["announce-rupture"]
    assert found.orders.broken == ()
