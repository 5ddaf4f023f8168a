"""Further runs with one known fault each, typed in words: it is named, and nothing else is.

What each leaves was written down before it was run. The faults are those of published teaching, by
the vocabulary's sources and their marks: reaching after a piece (uk-hospital-dropped-nucleus),
pulling at vitreous, cutting without separate ports (review-vitrectomy), a lens that nobody checked,
more fluid under an open capsule (eyeworld-2021). Box, words and menu are of the drill's own gates
(derived).
"""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.drill.entries import Ended, Ending
from chamberwise.engine.drill.fold import Drill, add, as_run
from chamberwise.engine.drill.ladder import menu
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.measured import Measured, measure
from chamberwise.engine.drill.taking import Typed, choose, helped, take, tick

from tests.engine.drill.stage import began, scenario, typed
from tests.engine.drill.test_known_faults import FIRST_MINUTE, LENS, VITRECTOMY

DROPPED = "dropped-nucleus"
FALLING = (
    "hold still",
    "stop aspirating",
    "foot off the pedal",
    "a piece is dropping",
    "fill the chamber with viscoelastic",
    "cover the tear",
    "call the vitreoretinal surgeon",
    "lower the infusion",
    "irrigation off",
    "take the tip out",
    "top up the viscoelastic",
    "lift speculum and drape",
    "who operates",
    "keep still please",
)


def found(drill: Drill) -> Measured:
    last = drill.journal[-1].at
    if not any(isinstance(each, Ended) for each in drill.journal):
        drill = add(drill, Ended(last, Ending.GIVEN_UP))
    return measure(drill.scenario.library, as_run(drill))


def harms(of: Measured) -> dict[str, list[str]]:
    """Return the acts that kept the first gate shut, each with the rules that it broke."""
    return {
        str(getattr(each.event.entry, "act", "")): sorted(
            broken.rule.id for broken in each.broken if broken.is_grave
        )
        for each in of.gates.harm
    }


def left_out(of: Measured) -> list[str]:
    return [each.critical.act for each in of.gates.left_out]


def but(lines: Iterable[str], *gone: str) -> list[str]:
    return [each for each in lines if each not in gone]


def test_a_piece_that_is_reached_for_is_named_by_what_it_is_and_where_it_went() -> None:
    of = scenario("half-in-view", pathway=DROPPED)
    drill = typed(of, [*FALLING[:4], "reach behind for the falling piece", *FALLING[4:]])
    measured = found(drill)
    assert list(harms(measured)) == ["chase-falling-piece"]
    assert [each.act for each in drill.standing.consequences] == ["chase-falling-piece"]
    assert drill.standing.truth["nucleus-behind"] == "gone"
    assert measured.gates.result is Result.NOT_YET


def test_vitreous_pulled_at_is_named_though_all_else_is_right() -> None:
    at = VITRECTOMY.index("read the stain aloud")
    lines = [*VITRECTOMY[:at], "mop the vitreous up with a sponge", *VITRECTOMY[at:]]
    drill = typed(scenario("strands-at-the-wound"), lines)
    assert list(harms(found(drill))) == ["pull-at-vitreous"]
    assert [each.act for each in drill.standing.consequences] == ["pull-at-vitreous"]


def test_a_cutter_without_ports_of_its_own_is_named() -> None:
    lines = but(VITRECTOMY, "make separate ports")
    cut = lines.index("cut the vitreous") + 1
    measured = found(typed(scenario("strands-at-the-wound"), lines[:cut]))
    assert "separate-ports-before-cutting" in {
        rule for rules in harms(measured).values() for rule in rules
    }
    assert [order.first for order, _ in measured.orders.broken] == ["separate-ports"]


def test_who_comes_after_the_first_minute_is_not_asked_for_what_the_brief_says_was_done() -> None:
    """The brief: help is in the room, the box is open, the infusion is low, the tip is out."""
    measured = found(typed(scenario("strands-at-the-wound"), VITRECTOMY))
    assert (left_out(measured), measured.orders.broken, harms(measured)) == ([], (), {})
    assert [each for each in measured.departures if each.matters] == []


def test_a_box_that_nobody_fetched_is_left_out_once_its_time_is_over() -> None:
    lines: list[str | tuple[int, str]] = list(but(FIRST_MINUTE, "get the box"))
    drill = typed(scenario("fifth-of-six"), [*lines, (130, "is the eye soft")])
    measured = found(drill)
    assert left_out(measured) == ["fetch-box"]
    assert harms(measured) == {}
    assert measured.gates.result is Result.NOT_YET


def test_a_rupture_that_nobody_said_is_left_out_and_never_recognised() -> None:
    lines: list[str | tuple[int, str]] = list(but(FIRST_MINUTE, "the capsule is open"))
    drill = typed(scenario("fifth-of-six"), [*lines, (130, "is the eye soft")])
    measured = found(drill)
    assert left_out(measured) == ["announce-rupture"]
    assert measured.recognition is not None
    assert not measured.recognition.happened
    assert harms(measured) == {}


def test_an_act_picked_from_a_menu_was_recognised_and_not_recalled() -> None:
    drill = typed(scenario("fifth-of-six"), FIRST_MINUTE[:4])
    at = drill.stands[-1][1].at + 2000
    drill = helped(helped(drill, at), at)
    due = next(each for each in menu(drill) if each.target and each.target.act == "call-for-help")
    assert due.target is not None
    drill = choose(drill, [due.target], Typed("3", at + 1000)).drill
    for line in FIRST_MINUTE[5:]:
        at += 3000
        drill = take(tick(drill, at).drill, Typed(line, at)).drill
    measured = found(drill)
    assert [each.critical.act for each in measured.gates.prompted] == ["call-for-help"]
    assert (left_out(measured), harms(measured)) == ([], {})


def test_who_was_sure_of_a_wrong_act_is_told_that_first() -> None:
    measured = found(typed(scenario("fifth-of-six"), ["hold still", "take one more piece /sure"]))
    sure = [getattr(each.entry, "act", "") for each in measured.confident_errors]
    assert sure == ["take-one-more-piece"]


def test_a_lens_that_nobody_checked_aloud_is_named_where_it_is_opened() -> None:
    measured = found(typed(scenario("which-lens"), but(LENS, "check the lens aloud")))
    assert [(order.first, order.then) for order, _ in measured.orders.broken] == [
        ("check-lens-aloud", "open-lens")
    ]
    assert left_out(measured) == ["check-lens-aloud"]


def test_more_fluid_under_an_open_capsule_takes_the_nucleus_with_it() -> None:
    seed = next(
        seed for seed in range(2000) if scenario(None, seed).opening.id == "hydrodissection"
    )
    drill = typed(scenario(None, seed), ["inject more fluid under the capsule"])
    assert list(harms(found(drill))) == ["keep-hydrodissecting"]
    assert drill.standing.truth["nucleus-behind"] == "gone"


def test_the_first_minute_of_a_drop_in_other_orders_costs_nothing() -> None:
    of = scenario("half-in-view", pathway=DROPPED)
    straight = found(typed(of, FALLING))
    hold, stop, pedal, say, fill, cover, call, low, *rest = FALLING
    for order in (
        (stop, hold, pedal, say, fill, cover, call, low),
        (hold, stop, pedal, say, call, fill, cover, low),
        (hold, stop, pedal, say, low, call, fill, cover),
    ):
        measured = found(typed(of, [*order, *rest]))
        assert harms(measured) == harms(straight) == {}
        assert left_out(measured) == left_out(straight) == []
        assert measured.orders.broken == ()
        assert [each for each in measured.departures if each.matters] == []


def test_to_ask_for_leave_to_do_a_wrong_act_is_not_to_do_it() -> None:
    drill = typed(scenario("fifth-of-six"), ["hold still", "should I take one more piece?"])
    assert drill.standing.done == ("hold-tip-still",)
    assert harms(found(drill)) == {}
    assert began(drill.scenario).seed == drill.scenario.seed


def test_where_cortex_is_out_nobody_is_told_that_some_of_it_is_soft() -> None:
    """The finding's sign tells of what is left; with nucleus and cortex out nothing is."""
    of = next(
        made
        for made in (scenario(None, seed) for seed in range(200))
        if (made.truth["cortex"], made.truth["nucleus-front"]) == ("none", "nothing")
    )
    drill = typed(of, [])
    seen = take(drill, Typed("any nucleus left?", drill.stands[-1][1].at + 1000)).seen
    assert seen == ("Nothing of the nucleus is left in front of the plane of the capsule.",)
