"""Runs with one known fault each: the fault is named, and nothing else is.

The faults are those the trade warns of: withdrawing from a soft chamber (crst-2009 and others under
`fill-before-tip-leaves`), cutting without a stain, a one-piece lens in the sulcus (chang-2009), a
call made late. The same acts in a harmless other order must cost nothing: derived.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.entries import Ending
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.measured import Measured, measure

from tests.conformance.driver import library
from tests.support.by_the_book import doings, drilled, moved, without

FIRST_MINUTE = list(doings()[:16])
TO_THE_CUT = list(doings()[:43])


def measured(script: list[str], ending: Ending = Ending.STOP_RULE) -> Measured:
    return measure(library(), drilled(script, ending))


def departures(of: Measured) -> list[tuple[str, str]]:
    found = []
    for each in of.departures:
        if not each.is_harmless:
            doing, event = each.doing, each.event
            name = (
                (doing.act or doing.looks_at)
                if doing
                else getattr(event and event.entry, "act", "")
            )
            found.append((each.how.value, str(name)))
    return found


def harms(of: Measured) -> list[tuple[str, str]]:
    return [
        (str(getattr(each.event.entry, "act", "")), broken.rule.id)
        for each in of.harms
        for broken in each.broken
        if not broken.was_lucky
    ]


def test_a_run_by_the_book_has_no_fault_from_end_to_end() -> None:
    found = measured(list(doings()), Ending.OUTCOME)
    assert (departures(found), harms(found)) == ([], [])
    assert found.gates.result is Result.MET
    assert [order.then for order, _ in found.orders.broken] == []


def test_withdrawing_early() -> None:
    script = moved(FIRST_MINUTE, "withdraw-tip", "fill-with-dispersive-viscoelastic")
    found = measured(script)
    assert departures(found) == [("too early", "withdraw-tip")]
    assert {act for act, _ in harms(found)} == {"withdraw-tip"}
    assert ("withdraw-tip", "fill-before-tip-leaves") in harms(found)
    assert [order.then for order, _ in found.orders.broken] == ["withdraw-tip"]
    assert found.gates.result is Result.NOT_YET
    assert [str(getattr(each.event.entry, "act", "")) for each in found.gates.harm] == [
        "withdraw-tip"
    ]


def test_a_forgotten_stain() -> None:
    found = measured(without(TO_THE_CUT, "stain-with-triamcinolone"))
    assert departures(found) == [("left out", "stain-with-triamcinolone")]
    assert [order.first for order, _ in found.orders.broken] == ["stain-with-triamcinolone"]


def test_a_call_made_late() -> None:
    script = [f"{at} {doing}" for at, doing in enumerate(FIRST_MINUTE, start=1)]
    late = without(script, "6 call-for-help")
    found = measured([*late, "50 call-for-help"])
    assert [each.critical.act for each in found.gates.late] == ["call-for-help"]
    assert harms(found) == []
    assert found.gates.result is Result.LATE


def test_a_one_piece_lens_in_the_sulcus() -> None:
    script = list(doings())
    script = without(script, "choose-three-piece-lens")
    place = script.index("place-lens-in-sulcus")
    found = measured(script[: place + 1])
    assert ("left out", "choose-three-piece-lens") in departures(found)
    assert "choose-three-piece-lens" not in {act for act, _ in harms(found)}


def test_a_call_not_made_twice_is_no_fault_and_a_fill_not_made_twice_is() -> None:
    again = list(doings()).index("call-for-help", 10)
    found = measured([each for n, each in enumerate(TO_THE_CUT) if n != again])
    assert departures(found) == []
    refill = list(doings()).index("fill-with-dispersive-viscoelastic", 43)
    script = [each for n, each in enumerate(doings()[: refill + 3]) if n != refill]
    found = measured(script)
    assert ("withdraw-cutter", "refill-after-work") in harms(found)
    assert ("left out", "fill-with-dispersive-viscoelastic") in departures(found)


@pytest.mark.parametrize(
    ("doing", "before"),
    [
        ("call-for-help", "hold-tip-still"),
        ("fetch-box", "announce-rupture"),
        ("stop-aspiration", "hold-tip-still"),
        ("tell-patient-to-keep-still", "announce-rupture"),
        ("relieve-outside-pressure", "lower-infusion"),
        ("agree-who-operates", "lower-infusion"),
    ],
)
def test_the_same_acts_in_a_harmless_other_order_cost_nothing(doing: str, before: str) -> None:
    found = measured(moved(FIRST_MINUTE, doing, before))
    assert (departures(found), harms(found)) == ([], [])
    assert found.gates.result is Result.MET
