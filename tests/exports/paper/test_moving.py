"""An item moved is where it should be, and nothing else of it has changed."""

from __future__ import annotations

from dataclasses import MISSING, fields, replace

import pytest
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Align,
    Arrow,
    Code,
    Item,
    Outline,
    Role,
    Run,
    Shape,
    Style,
    Text,
    Tier,
)

STYLE = Style(11.0, ink=Ink.GREY, align=Align.RIGHT)
ITEMS: list[Item] = [
    Text(1.0, 2.0, 3.0, 4.0, (Run("lid"),), STYLE, Role.MARK, Tier.REFER, "a/b", 55.0),
    Shape(Outline.DECISION, 1.0, 2.0, 3.0, 4.0, Ink.GREY, Ink.WASH, 0.7, "a/b"),
    Arrow(((1.0, 2.0), (3.0, 4.0)), 0.9, Ink.GREY, False, True, "a/b"),
    Code(1.0, 2.0, 3.0, ("10", "01"), "a stamp"),
]


@pytest.mark.parametrize("item", ITEMS, ids=lambda each: type(each).__name__)
def test_only_the_place_changes(item: Item) -> None:
    # Nothing is at its default here: else a field left out could not be told from one kept.
    for each in fields(item):
        assert each.default is MISSING or getattr(item, each.name) != each.default
    if isinstance(item, Arrow):
        expected: Item = replace(item, points=((11.0, 22.0), (13.0, 24.0)))
    else:
        expected = replace(item, x=11.0, y=22.0)
    assert moved(item, 10.0, 20.0) == expected
