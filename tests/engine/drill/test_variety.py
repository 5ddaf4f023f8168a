"""Ten drills in a row are ten different ones, and each calls things what they are at its stage."""

from __future__ import annotations

from collections import Counter

import pytest
from chamberwise.engine.drill.entries import Did
from chamberwise.engine.drill.taking import Typed, take
from chamberwise.engine.drill.wording.matching import understand
from chamberwise.engine.drill.wording.phrasebook import Target, phrasebook_of

from tests.engine.drill.stage import RUPTURE, scenario, typed

ROWS = range(0, 300, 10)


def at_stage(opening: str) -> int:
    """Return the first seed whose drill begins so."""
    return next(seed for seed in range(2000) if scenario(None, seed).opening.id == opening)


@pytest.mark.parametrize("pathway", [RUPTURE, "dropped-nucleus"])
def test_ten_seeds_in_a_row_begin_and_show_themselves_differently(pathway: str) -> None:
    for row in ROWS:
        drawn = [scenario(None, seed, pathway) for seed in range(row, row + 10)]
        assert len({(of.so_far, of.cue) for of in drawn}) >= 8
        assert len({of.brief for of in drawn}) == 10
        assert len({of.brief[0] for of in drawn}) >= 8
        assert Counter(of.opening.id for of in drawn).most_common(1)[0][1] <= 4
        assert len({tuple(sorted(of.truth.items())) for of in drawn}) >= 6


def test_before_a_syringe_or_an_injector_stop_is_what_it_is_there() -> None:
    for opening, told in (
        ("hydrodissection", "Done: Stop injecting."),
        ("lens-insertion", "Done: Stop pushing the lens."),
        ("nucleus", "Done: Stop aspiration and ultrasound."),
    ):
        drill = typed(scenario(None, at_stage(opening)), ())
        taken = take(drill, Typed("stop", drill.stands[-1][1].at + 1000))
        assert taken.said == (told,)
        assert isinstance(taken.drill.journal[-1], Did)
        assert taken.drill.journal[-1].act == "stop-aspiration"


@pytest.mark.parametrize("said", ["stop injecting", "stop pushing fluid", "off the plunger"])
def test_at_hydrodissection_the_syringe_is_stopped(said: str) -> None:
    book = phrasebook_of(scenario(None, at_stage("hydrodissection")))
    assert understand(book, said).taken == (Target(act="stop-aspiration"),)


def test_fluid_let_out_of_an_unfilled_chamber_is_made_up_for_from_behind() -> None:
    """Derived from what is read of a tip withdrawn from a soft chamber (crst-2009)."""
    of = scenario("fifth-of-six")
    assert of.truth["vitreous"] == "at-tear"
    drill = typed(of, ["hold still", "let the fluid out"])
    assert drill.standing.truth["vitreous"] == "in-chamber"
    assert [each.act for each in drill.standing.consequences] == ["let-fluid-out"]
    drill = typed(of, ["hold still", "fill the chamber with viscoelastic", "let the fluid out"])
    assert drill.standing.truth["vitreous"] == "at-tear"
    assert drill.standing.consequences == ()


def test_no_stain_is_seen_that_nobody_gave() -> None:
    of = scenario("sheet-that-stays")
    assert of.truth["vitreous"] == "none"
    drill = typed(of, ["hold still"])
    at = drill.stands[-1][1].at + 1000
    assert "Nothing is stained." in take(drill, Typed("where is the vitreous", at)).seen[0]
    drill = typed(of, ["hold still", "stain with triamcinolone"])
    at = drill.stands[-1][1].at + 1000
    assert "stain settles nowhere" in take(drill, Typed("where is the vitreous", at)).seen[0]
