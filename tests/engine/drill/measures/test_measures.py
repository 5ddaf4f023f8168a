"""Times, orders, omissions, help, loops, certainty and gates of runs by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from chamberwise.engine.drill.entries import Asked, Entry, ReadBack, ReportedDone, Resumed
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.harm import harmful
from chamberwise.engine.drill.measures.loops import closure, loops
from chamberwise.engine.drill.measures.measured import Measured, measure
from chamberwise.engine.drill.measures.omissions import omission
from chamberwise.engine.drill.measures.orders import orders
from chamberwise.engine.drill.measures.prompting import dependence
from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.drill.measures.times import recognition, times
from chamberwise.engine.drill.run import Run
from chamberwise.engine.meaning.advance import advance, begin
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.meaning.state import Done
from chamberwise.engine.model.drill import CriticalAct
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import HarmSeverity, Pattern

from tests.support import rules
from tests.support.build import act, ask, do, end, finding, library, pathway
from tests.support.running import NOW, ran

NAMES = ("stop", "call", "fill", "withdraw", "stain", "cut")
PAIRS = "stop < fill, fill < withdraw, withdraw < stain, stain < cut, call < cut"


def small() -> Library:
    return library(
        pathway(
            "one",
            do("first", "look", acts="stop call fill"),
            ask("look", "vitreous", none="second", present="second"),
            do("second", "over", acts="withdraw stain cut"),
            end("over"),
        ),
        findings=[finding("vitreous", "none present")],
        acts=[act(name) for name in NAMES],
        rules=[
            rules.rule(
                Pattern.ABSENCE,
                rules.at(act="cut", possibly={"vitreous": "none"}),
                name="cut-only-vitreous",
            ),
            rules.rule(
                Pattern.PRECEDENCE,
                rules.at(act="withdraw"),
                rules.at(act="fill"),
                name="fill-first",
            ),
        ],
    )


def run(script: str, **more: object) -> Run:
    return ran(small(), "one", script, {"vitreous": "present"}, **more)  # type: ignore[arg-type]


def measured(script: str, *critical: CriticalAct, **more: object) -> Measured:
    return measure(small(), run(script, critical=critical, **more))


@pytest.mark.parametrize(
    ("script", "broken", "of"),
    [
        ("stop, call, fill, withdraw, stain, cut", 0, 5),
        ("call, stop, withdraw, fill, stain, cut", 1, 5),
        ("stop, withdraw, cut", 3, 3),
    ],
)
def test_broken_pairs_of_the_worked_example(script: str, broken: int, of: int) -> None:
    """Computed in the evidence notes of the drill: 0 of 5, 1 of 5 (the dangerous one), 3 of 3."""
    found = orders(run(script, orders=PAIRS))
    assert (len(found.broken), len(found.broken) + len(found.kept)) == (broken, of)
    assert len(found.not_applicable) == 5 - of


def test_times_are_from_the_cue_and_censored_at_the_end() -> None:
    given = run("7 stop, 90 call", critical=(CriticalAct("stop"), CriticalAct("fill")), lasts=120)
    done, never = times(given)
    assert (done.duration, never.duration) == (Duration(7, True), Duration(120, False))


def test_a_time_that_runs_from_another_act_is_not_asked_before_that_act() -> None:
    critical = CriticalAct("fill", hard=10, once="call")
    assert not times(run("5 stop", critical=(critical,)))[0].applies
    late = times(run("20 call, 45 fill", critical=(critical,)))[0]
    assert (late.duration, late.is_late) == (Duration(25, True), True)


def test_recognition_is_timed_apart_from_acting() -> None:
    assert recognition(run("9 stop", recognised=4)) == Duration(4, True)
    assert recognition(run("9 stop", lasts=30)) == Duration(30, False)


def test_an_interrupted_run_says_nothing_about_time_and_all_about_acts() -> None:
    given = run("7 stop", critical=(CriticalAct("stop", hard=5),))
    taken_up = replace(given, entries=(*given.entries, Resumed(8000, NOW)))
    assert recognition(taken_up) is None
    found = times(taken_up)[0]
    assert (found.duration, found.is_late, found.done is not None) == (None, False, True)


def test_gate_a_stays_shut_for_harm_whatever_else_was_done() -> None:
    """Five of six right would pass a cut of 73 %; it does not pass here: computed, synthetic."""
    found = measured("stop, call, withdraw, fill, vitreous?, stain, cut")
    assert [each.broken[0].rule.id for each in found.gates.harm] == ["fill-first"]
    assert found.gates.result is Result.NOT_YET


def test_gate_b_stays_shut_for_what_was_left_out_or_chosen_from_a_menu() -> None:
    critical = (CriticalAct("stop"), CriticalAct("fill"))
    assert measured("stop", *critical).gates.result is Result.NOT_YET
    assert measured("stop, fill menu", *critical).gates.result is Result.NOT_YET
    assert measured("stop, fill nudged", *critical).gates.result is Result.MET


def test_gate_c_says_done_and_late() -> None:
    critical = CriticalAct("stop", soft=5, hard=10)
    assert measured("11 stop", critical).gates.result is Result.LATE
    assert measured("10 stop", critical).gates.result is Result.MET


def test_what_was_safe_by_luck_alone_is_told_apart() -> None:
    found = measured("stop, call, fill, withdraw, stain, cut")
    assert [(each.broken[0].rule.id, each.was_lucky) for each in found.harms] == [
        ("cut-only-vitreous", True)
    ]
    assert found.gates.harm == ()
    looked = measured("stop, call, fill, vitreous?, withdraw, stain, cut")
    assert looked.harms == ()


def test_omissions_and_help_are_shares_of_what_applied() -> None:
    critical = (CriticalAct("stop"), CriticalAct("fill"), CriticalAct("cut", once="stain"))
    acts = times(run("stop menu", critical=critical))
    assert (omission(acts).count, omission(acts).of) == (1, 2)
    assert (dependence(acts).count, dependence(acts).of) == (1, 1)


def test_only_what_was_wrong_and_sure_is_a_confident_error() -> None:
    found = measured("stop sure, call, withdraw sure, fill sure, vitreous?")
    assert [getattr(each.entry, "act", "") for each in found.confident_errors] == ["withdraw"]


def test_a_loop_is_closed_when_read_back_and_reported_done() -> None:
    said: list[Entry] = [
        Asked(1000, "box", "surgeon", "circulating"),
        ReadBack(2000, "box", "circulating"),
        Asked(3000, "help", "surgeon", "circulating"),
        ReportedDone(9000, "box", "circulating"),
    ]
    found = loops(replace(run("stop"), entries=tuple(said)))
    assert [each.is_closed for each in found] == [True, False]
    assert (closure(found).count, closure(found).of) == (1, 2)


def test_a_look_too_early_is_harmless_only_while_it_still_holds() -> None:
    early = measured("vitreous?, stop, call, fill, withdraw, stain, cut")
    assert [each.how.value for each in early.departures if not each.is_harmless] == []
    assert early.first_departure is None


def test_what_is_never_right_is_a_rule_of_its_own() -> None:
    never = rules.rule(Pattern.ABSENCE, rules.at(act="yank"), name="never-yank")
    never = replace(never, severity=HarmSeverity.SERIOUS)
    given = replace(run("stop, yank"), rules=(never,), counts_as={"yank": "withdraw"})
    (found,) = measure(small(), given).gates.harm
    assert [each.rule.id for each in found.broken] == ["never-yank", "fill-first"]
    assert all(each.is_grave for each in found.broken)


def test_an_act_that_only_drills_know_counts_as_the_one_rules_know() -> None:
    given = replace(run("stop, call, yank"), counts_as={"yank": "withdraw"})
    (found,) = measure(small(), given).harms
    assert (getattr(found.event.entry, "act", ""), found.broken[0].rule.id) == (
        "yank",
        "fill-first",
    )


def test_what_happened_before_the_drill_began_is_not_asked_for_again() -> None:
    whole = run("stop, call, fill, vitreous?, withdraw")
    before = small().pathways["one"].start
    filled = Moment(Place("one", before), whole.events[0].possible, 0, act="fill")
    late = run("withdraw")
    assert [each.broken[0].rule.id for each in harmful(small(), late)] == ["fill-first"]
    assert harmful(small(), replace(late, so_far=(filled,))) == ()


def test_what_is_seen_without_looking_need_not_be_looked_at() -> None:
    looks = rules.rule(
        Pattern.PRECEDENCE, rules.at(act="stain"), rules.at(asks="vitreous"), name="look-first"
    )
    given = replace(run("stop, stain"), rules=(looks,))
    assert [each.broken[0].rule.id for each in harmful(small(), given)] == ["look-first"]
    assert harmful(small(), replace(given, at_a_glance=("vitreous",))) == ()


def test_a_drill_that_begins_on_the_way_leaves_out_nothing_before() -> None:
    state = begin(small(), "one").state
    there = advance(small(), state, Done())
    given = replace(run("vitreous?, withdraw, stain"), first=there)
    assert measure(small(), given).departures == ()


def test_what_the_team_knew_from_the_brief_is_no_look_left_out() -> None:
    told = run("stop, call, fill, withdraw, stain")
    assert [each.how.value for each in measure(small(), told).departures] == ["left out"]
    bits = layout_of(small()).field("one", "vitreous")
    known = tuple(
        replace(each, possible=each.possible & ~bits.every | bits.bits["present"])
        for each in told.events
    )
    assert measure(small(), replace(told, events=known)).departures == ()
