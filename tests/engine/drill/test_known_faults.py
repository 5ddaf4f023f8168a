"""Scripted runs with known faults leave exactly the consequences and broken rules expected.

The faults are those that published teaching names first: the tip withdrawn from an unfilled
chamber (crst-2009, healio-2013 in the vocabulary's sources), vitreous cut unstained, a single-piece
lens in the sulcus (chang-2009). Sources are the vocabulary's, with its marks.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.entries import Did, Looked, NotUnderstood
from chamberwise.engine.drill.fold import Drill, as_run
from chamberwise.engine.drill.measures.harm import harmful

from tests.engine.drill.stage import scenario, typed

FIRST_MINUTE = (
    "hold still",
    "stop aspirating",
    "irrigation only",
    "the capsule is open",
    "call the senior surgeon",
    "get the box",
    "ask the patient to keep still",
    "fill the chamber with viscoelastic",
    "cover the tear",
    "irrigation off",
    "take the tip out",
    "top up the viscoelastic",
    "lower the infusion",
    "lift speculum and drape",
    "who operates",
)
LOOKS = (
    "is the eye soft",
    "prepare the vitrector",
    "look behind the tear",
    "how much nucleus is left",
    "where is the vitreous",
)
VITRECTOMY = (
    "prepare the vitrector",
    "who operates",
    "is the vitrector ready",
    "is the main wound tight",
    "record that vitreous came forward",
    "read the stain aloud",
    "rinse the viscoelastic away",
    "stain with triamcinolone",
    "limbal or pars plana",
    "make separate ports",
    "place the infusion low",
    "start cutting before aspiration",
    "insert the vitrector",
    "cut the vitreous",
    "keep the port in view",
    "where is the vitreous",
    "fill the chamber",
    "take the vitrector out",
    "fill the chamber",
    "take the infusion out",
    "read the stain aloud",
    "rinse the viscoelastic away",
    "stain again",
    "where is the vitreous",
)
LENS = (
    "fill the chamber",
    "inspect the rim",
    "test the rim",
    "what support is left",
    "how is the front opening",
    "where is the vitreous",
    "is the eye soft",
    "do we have a three piece lens",
    "three piece lens please",
    "recalculate the power",
    "reduce the power for the sulcus",
    "read the power aloud",
    "check the lens aloud",
    "open the lens",
    "place the lens in the sulcus",
    "where is the vitreous",
)


def acts(drill: Drill) -> list[str]:
    return [each.entry.act for each in drill.standing.events if isinstance(each.entry, Did)]


def broken(drill: Drill) -> dict[str, str]:
    """Return the pathway's rules that were broken, by the act that safety rules take it for."""
    run = as_run(drill)
    return {
        each.rule.id: run.counts_as.get(act, act)
        for harm in harmful(drill.scenario.library, run)
        for act in [getattr(harm.event.entry, "act", "")]
        for each in harm.broken
        if not each.is_never_right
    }


def led_to(drill: Drill) -> list[str]:
    return [each.act for each in drill.standing.consequences]


@pytest.mark.parametrize(
    ("name", "lines"),
    [
        ("fifth-of-six", (*FIRST_MINUTE, *LOOKS)),
        ("strands-at-the-wound", VITRECTOMY),
        ("which-lens", LENS),
    ],
)
def test_what_is_done_as_the_pathway_has_it_leads_to_nothing(
    name: str, lines: tuple[str, ...]
) -> None:
    drill = typed(scenario(name), lines)
    done = [each for each in drill.standing.events if isinstance(each.entry, Did | Looked)]
    assert not any(isinstance(entry, NotUnderstood) for entry in drill.journal)
    assert len(done) == len(lines)
    assert (led_to(drill), broken(drill)) == ([], {})


def test_harmless_other_orders_cost_nothing() -> None:
    hold, stop, pedal, say, call, box, patient, *rest = FIRST_MINUTE
    drill = typed(
        scenario("fifth-of-six"), (stop, pedal, hold, patient, box, call, say, *rest, *LOOKS)
    )
    assert (led_to(drill), broken(drill)) == ([], {})
    assert (
        drill.standing.state == typed(scenario("fifth-of-six"), FIRST_MINUTE + LOOKS).standing.state
    )


def test_early_withdrawal_flattens_the_chamber_and_brings_vitreous() -> None:
    of = scenario("fifth-of-six")
    assert of.truth["vitreous"] == "at-tear"
    drill = typed(of, ["pull the tip out"])
    assert drill.standing.truth["vitreous"] == "at-wound"
    assert led_to(drill) == ["withdraw-tip"]
    assert "flat" in drill.standing.cues[0]
    assert broken(drill) == dict.fromkeys(
        ("fill-before-tip-leaves", "tip-is-held-first", "aspiration-stops-first"), "withdraw-tip"
    )


def test_after_an_early_withdrawal_the_pathway_finds_the_vitreous_it_brought() -> None:
    left_out = ("hold still", "stop aspirating", "take the tip out", "irrigation off")
    rest = [each for each in FIRST_MINUTE if each not in left_out]
    drill = typed(scenario("fifth-of-six"), ["pull the tip out", *rest, *LOOKS])
    saw = [each.entry for each in drill.standing.events if isinstance(each.entry, Looked)]
    assert (saw[-1].finding, saw[-1].saw) == ("vitreous", "at-wound")
    assert drill.standing.state.place.pathway == "anterior-vitrectomy"


def test_a_forgotten_stain_is_named_where_the_cutter_goes_in() -> None:
    unstained = [each for each in VITRECTOMY if "stain" not in each and "rinse" not in each]
    cut = unstained.index("cut the vitreous") + 1
    drill = typed(scenario("strands-at-the-wound"), unstained[:cut])
    assert led_to(drill) == ["insert-cutter", "cut-vitreous"]
    assert broken(drill) == {"stain-before-cutter": "insert-cutter"}
    assert drill.standing.truth["vitreous"] == "in-chamber"


def test_a_single_piece_lens_in_the_sulcus_is_named() -> None:
    at = LENS.index("three piece lens please")
    lines = (
        *LENS[:at],
        "read the power aloud",
        "recalculate the power",
        "check the lens aloud",
        "reduce the power for the sulcus",
        "open the lens",
        "put the single piece in the sulcus",
    )
    drill = typed(scenario("which-lens"), lines)
    assert led_to(drill) == ["place-single-piece-lens-in-sulcus"]
    assert broken(drill) == {"three-piece-in-the-sulcus": "place-lens-in-sulcus"}
    assert drill.standing.truth["lens-hold"] == "unsteady"


def test_a_lens_chosen_single_piece_and_placed_in_the_sulcus_is_named_as_well() -> None:
    lines = ["use the planned lens" if each == "three piece lens please" else each for each in LENS]
    drill = typed(scenario("which-lens"), lines)
    assert led_to(drill) == ["place-lens-in-sulcus"]
    assert broken(drill) == {"three-piece-in-the-sulcus": "place-lens-in-sulcus"}


def test_a_late_call_breaks_nothing_but_is_timed() -> None:
    lines: list[str | tuple[int, str]] = [each for each in FIRST_MINUTE if "call" not in each]
    drill = typed(scenario("fifth-of-six"), [*lines, (130, "call the senior surgeon")])
    assert (led_to(drill), broken(drill)) == ([], {})
    run = as_run(drill)
    call = next(each for each in run.critical if each.act == "call-for-help")
    late = next(each.entry for each in run.events if getattr(each.entry, "act", "") == call.act)
    assert run.first_cue is not None
    assert call.hard is not None
    assert (late.at - run.first_cue) / 1000 == 130 > call.hard


def test_one_more_piece_is_named_by_the_rules_it_breaks() -> None:
    drill = typed(scenario("fifth-of-six"), ["take one more piece"])
    assert led_to(drill) == ["take-one-more-piece"]
    assert "help-before-manoeuvres" in broken(drill)
