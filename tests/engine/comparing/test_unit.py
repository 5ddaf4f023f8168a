"""What a unit sets in its sheet, compared: each kind of setting with the rating it has to get."""

from __future__ import annotations

import pytest
from chamberwise.engine.comparing.change import Change, Rating
from chamberwise.engine.comparing.compare import Comparison, Version, compare
from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import File, Loaded

from tests.engine.comparing.versions import NOTHING_PRINTED
from tests.engine.local.stage import PATHWAY, below, edited, sheet
from tests.support.build import TODAY

S, P, E = Rating.SAFETY, Rating.PROCEDURAL, Rating.EDITORIAL
OFF = """switched off:
  board-is-written: {by: Lead, because: Said once., on: 2026-11-20}
phones:"""
EDITS = [
    (S, "phones", "number: extension X1", "number: extension X7"),
    (S, "phones", "outside hours: extension X2", "outside hours: extension X1"),
    (S, "products", "product: Nylon N", "product: Silk S"),
    (S, "machine", "page FILL", "page DRAIN"),
    (S, "switched off", "phones:", OFF),
    (P, "products", "shelf: top", "shelf: bottom"),
    (P, "places", "walk: 20 s", "walk: 90 s"),
    (P, "machine", "The machine of theatre 2", "The machine of theatre 3"),
    (P, "unit", "unit: Harbour Eye Unit", "unit: Another Unit"),
    (E, "choices", "The unit has no air filter.", "No air filter is kept."),
    (E, "time targets", "Median of six", "Median of nine"),
]


def version(file: File | None) -> Version:
    loaded: Loaded = localised(below(), file) if file else below()
    assert file is None or loaded.library.local is not None
    return Version(loaded, PATHWAY)


def compared(old: File | None, new: File | None) -> Comparison:
    return compare(version(old), version(new), NOTHING_PRINTED, TODAY)


def only(found: Comparison) -> Change:
    (change,) = found.changes
    return change


@pytest.mark.parametrize(("rating", "table", "was", "now"), EDITS, ids=[each[2] for each in EDITS])
def test_each_setting_is_one_change_of_its_rating(
    rating: Rating, table: str, was: str, now: str
) -> None:
    one, other = sheet("everything"), edited("everything", (was, now))
    for change in (only(compared(one, other)), only(compared(other, one))):
        assert (change.rating, change.at.table) == (rating, table)


def test_what_a_unit_sets_first_is_procedural_and_what_it_gives_up_is_not() -> None:
    came = {each.at.table: each.rating for each in compared(None, sheet("everything")).changes}
    gone = {each.at.table: each.rating for each in compared(sheet("everything"), None).changes}
    assert (came["phones"], gone["phones"]) == (P, S)


def test_a_sheet_that_changed_in_nothing_is_the_same() -> None:
    assert compared(sheet("everything"), sheet("everything")).is_same


def test_another_phone_is_to_be_rung_in_a_rehearsal() -> None:
    found = compared(sheet("everything"), edited("everything", ("extension X1", "extension X7")))
    assert found.touched.printed == (PATHWAY,)
    assert found.touched.acts == ("call-for-help",)
