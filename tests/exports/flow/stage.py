"""Orders for sheets, and the laws that every page of a hand-held sheet keeps."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache
from itertools import combinations
from pathlib import Path

from chamberwise.engine.model.library import Library
from chamberwise.engine.reading.library import load_library
from chamberwise.exports.control.content import FOLLOW, Control
from chamberwise.exports.paper.sheet import Arrow, Page, Role, Text
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import Order
from chamberwise.exports.typesetting.measuring import Ruler

TODAY = date(2026, 11, 25)
LANDSCAPE = Sized(Paper.A4, Turn.LANDSCAPE)
FLAGSHIP = "posterior-capsule-rupture"
PROTOCOLS = Path(__file__).resolve().parents[3] / "protocols"
MODULES = tuple("10" * 12 + "1" for _ in range(25))
CUT_MARGIN = 8.0
"""Cut marks stand nearer to the edge than words; still on what a printer reaches."""


@cache
def shipped() -> Library:
    return load_library(PROTOCOLS).library


@cache
def _ruler() -> Ruler:
    return Ruler()


def control(library: Library, name: str) -> Control:
    own = library.pathways[name]
    return Control(
        own.title,
        "sheet",
        name,
        own.edition,
        own.authors,
        None,
        None,
        own.reviewed,
        own.review_by,
        None,
        TODAY,
        "7QK2-M4XP-3",
        MODULES,
    )


def order(library: Library, name: str, sized: Sized = LANDSCAPE) -> Order:
    return Order(library, name, sized, control(library, name), TODAY, ruler=_ruler())


def approved(given: Order) -> Order:
    signed = replace(given.control, approved_by="Lead", approved_on=TODAY, unit="Unit")
    return replace(given, control=signed)


def words(page: Page) -> list[str]:
    """Return the words of a page, its quantities held or not."""
    return [each.text.replace("\u00a0", " ") for each in page.texts]


def printed(pages: tuple[Page, ...]) -> str:
    return "\n".join(each for page in pages for each in words(page))


def assert_lawful(page: Page, least: float) -> None:
    """Assert that nothing leaves the page, no words overlap, and none is too small."""
    for each in page.items:
        _assert_inside(page, each)
    for one, other in combinations(page.texts, 2):
        assert not _overlap(one, other), (one.text, other.text)
    for text in page.texts:
        small = text.role in (Role.NOTE, Role.FOOTER, Role.MARK)
        assert text.style.size >= (9.2 if small else least), text.text
        assert text.style.pitch >= 1.25
    assert any(FOLLOW in text for text in words(page))


def _assert_inside(page: Page, item: object) -> None:
    width, height = page.format
    if isinstance(item, Arrow):
        for x, y in item.points:
            assert CUT_MARGIN <= x <= width - CUT_MARGIN
            assert CUT_MARGIN <= y <= height - CUT_MARGIN
    elif isinstance(item, Text):
        assert item.x >= 12 - 0.01
        assert item.x + item.width <= width - 12 + 1.5
        assert item.y + item.height <= height - 12 + 0.01


def _overlap(one: Text, other: Text) -> bool:
    slack = 0.01
    return (
        one.x < other.x + other.width - slack
        and other.x < one.x + one.width - slack
        and one.y < other.y + other.height - slack
        and other.y < one.y + one.height - slack
    )
