"""How findings lie side by side in one number."""

from __future__ import annotations

import pytest
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Freshness, State, start
from chamberwise.engine.model.library import Library, Place

from tests.support.build import choice, end, finding, library, pathway


@pytest.fixture
def two() -> Library:
    one = pathway("one", end("over"), findings=[finding("depth", "flat deep")])
    other = pathway("other", end("over"), findings=[finding("own", "yes no")])
    shared = [finding("depth", "high low middle"), choice("pedal", "up down", "down")]
    return library(one, other, findings=shared)


def test_no_two_findings_share_a_bit(two: Library) -> None:
    layout = layout_of(two)
    fields = [*layout.shared.values(), *layout.own["one"].values(), *layout.own["other"].values()]
    assert sum(field.every for field in fields) == layout.every
    assert layout.every == (1 << 9) - 1


def test_a_pathways_own_finding_stands_before_the_shared_one(two: Library) -> None:
    layout = layout_of(two)
    assert list(layout.field("one", "depth").bits) == ["flat", "deep"]
    assert list(layout.field("other", "depth").bits) == ["high", "low", "middle"]
    with pytest.raises(KeyError):
        layout.field("one", "own")


def test_the_same_library_has_one_layout_and_another_its_own(two: Library) -> None:
    again = Library(two.shared, two.pathways)
    assert layout_of(two) is layout_of(two)
    assert layout_of(again) is not layout_of(two)


def test_values_come_in_document_order_and_unknown_ones_count_for_nothing(two: Library) -> None:
    field = layout_of(two).field("other", "depth")
    assert field.values(field.every) == ("high", "low", "middle")
    assert field.values(field.mask(["middle", "high"])) == ("high", "middle")
    assert field.mask(["nonsense"]) == 0


def test_at_first_nothing_is_known_but_what_the_unit_has_chosen(two: Library) -> None:
    state, layout = start(two, "other"), layout_of(two)
    assert state.freshness(layout.field("other", "depth")) is Freshness.UNKNOWN
    assert state.freshness(layout.field("other", "own")) is Freshness.UNKNOWN
    assert state.freshness(layout.field("other", "pedal")) is Freshness.KNOWN
    assert state.values(layout.field("other", "pedal")) == ("down",)


def test_freshness_tells_four_things_apart(two: Library) -> None:
    field = layout_of(two).field("other", "depth")
    place = Place("other", "over")
    rest = layout_of(two).every & ~field.every

    def fresh(possible: int, last_seen: int = 0) -> Freshness:
        return State(place, rest | possible, last_seen).freshness(field)

    assert fresh(field.every) is Freshness.UNKNOWN
    assert fresh(field.mask(["low"])) is Freshness.KNOWN
    assert fresh(field.mask(["low", "high"])) is Freshness.PARTLY
    assert fresh(field.every, field.mask(["low"])) is Freshness.STALE
    stale = State(place, rest | field.every, field.mask(["low"]))
    assert stale.values(field) == ("low",)
