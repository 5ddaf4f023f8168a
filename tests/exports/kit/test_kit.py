"""The kit list: everything needed is on it once, what is needed at once comes first."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.model.step import Action
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.exports.kit.content import AT_ONCE, LATER, UNSET
from chamberwise.exports.kit.extract import kit_list
from chamberwise.exports.kit.make import make
from chamberwise.exports.kit.placing import COLUMNS
from chamberwise.exports.kit.text import text

from tests.exports.flow.small import small
from tests.exports.flow.stage import FLAGSHIP, order, shipped, words
from tests.tui.golden import assert_as_kept

HERE = Path(__file__).resolve().parent


def test_text_of_a_small_list_to_the_letter() -> None:
    assert_as_kept(HERE / "small.txt", text(kit_list(small(), "small")))


@pytest.mark.parametrize("name", list(shipped().pathways))
def test_every_need_is_told_once_with_every_step_that_has_it(name: str) -> None:
    needs: dict[str, set[str]] = {}
    for pathway in reached_by_handover(shipped(), name):
        for step in shipped().pathways[pathway].steps.values():
            for item in step.needs if isinstance(step, Action) else ():
                title = shipped().words(pathway).kit[item].title
                needs.setdefault(title, set()).add(f"{pathway}/{step.id}")
    rows = kit_list(shipped(), name).rows
    assert {row.item: {use.of for use in row.uses} for row in rows} == needs
    assert len(rows) == len(needs)


@pytest.mark.parametrize("name", list(shipped().pathways))
def test_every_item_is_printed_once_and_every_page_has_its_heads(name: str) -> None:
    made = make(order(shipped(), name))
    said = [each.removeprefix("↗ ") for page in made.pages for each in words(page)]
    for row in kit_list(shipped(), name).rows:
        assert said.count(row.item) == 1
    for page in made.pages:
        on_page = words(page)
        assert all(on_page.count(head) == 1 for head in COLUMNS)
        assert sum(UNSET in each for each in on_page) == 1


def test_what_is_needed_at_once_comes_first() -> None:
    parts = dict(kit_list(shipped(), FLAGSHIP).parts)
    assert {"Capsule rupture box", "Dispersive viscoelastic"} <= {
        row.item for row in parts[AT_ONCE]
    }
    assert "Vitrector with separate infusion cannula" in {row.item for row in parts[LATER]}
    said = [each for page in make(order(shipped(), FLAGSHIP)).pages for each in words(page)]
    assert said.index(AT_ONCE) < said.index("Capsule rupture box") < said.index(LATER)


def test_an_item_that_only_another_pathway_needs_is_flagged() -> None:
    rows = {row.item: row for row in kit_list(small(), "small").rows}
    assert rows["Cutter"].only_after_handover
    assert not rows["Box"].only_after_handover
    said = words(make(order(small(), "small")).pages[0])
    assert "↗ Cutter" in said
    assert "Box" in said
