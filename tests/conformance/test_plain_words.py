"""No product is named: no trademark sign, and every capital is one that was looked at."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

import pytest

from tests.conformance.told_texts import Text, texts

TOLD_KEYS = """does says instead label sign danger warning caution notice why because title question
outcome amount summary"""
TOLD = frozenset(TOLD_KEYS.split())
TRADEMARK = re.compile(r"[®™©℠]|\((?:R|TM|C)\)", re.IGNORECASE)

CAPITALS_WITHIN = frozenset({"mL", "D", "Parkinson", "sub-Tenon's"})
"""A unit, the dioptre, and two people whom a disease and a block are named after."""

LOOKED_AT = """
Acetylcholine Advance Aim Also Aspirate Assistant Begin Blade Book Brief Bulging Bury
Cephalosporin Circulating Constrict Damaged Deepen Dissect Draining Either Epinucleus Faster Fetch
Fix High Hydrate I Inject Inspect Judge Levitate Load Make Match Micro-scissors Part Part-way
Penetrating Plate Prepare Preparing Prescribe Press Raise Reader Refill Replace Restock
Return Reverse Send Settle Shallow Sheets Slide Softness Squeezing State Steadiness
Sub-Tenon's Sudden Tenfold Tools Top Topical Treat Unchanged Uneven Unsuitable Untrained
Unwashed Vergence Warn Wash We Wet Wristband Write
"""
FIRST_WORDS = frozenset(LOOKED_AT.split())
"""Words that begin a sentence and stand nowhere in small letters; each is an ordinary word."""


def told() -> list[Text]:
    return [text for text in texts() if text.key in TOLD and text.file != "sources"]


def sentences(text: str) -> list[list[str]]:
    parts = re.split(r"(?<=[.!?:])\s+", text)
    return [found for part in parts if (found := re.findall(r"[A-Za-z][\w'’-]*", part))]


def unlooked_at(said: Iterable[str], small: frozenset[str]) -> Iterator[str]:
    """Yield the capitalised words that nobody has looked at."""
    for text in said:
        for words in sentences(text):
            first, *rest = words
            yield from (word for word in rest if not word.islower() and _new(word))
            if first[0].isupper() and first.lower() not in small and first not in FIRST_WORDS:
                yield first


def _new(word: str) -> bool:
    return word not in CAPITALS_WITHIN


def small_words() -> frozenset[str]:
    return frozenset(
        word
        for text in told()
        for words in sentences(text.text)
        for word in words
        if word.islower()
    )


def test_no_trademark_sign_anywhere() -> None:
    assert [text for text in texts() if TRADEMARK.search(text.text)] == []


def test_every_capital_was_looked_at() -> None:
    assert list(unlooked_at((text.text for text in told()), small_words())) == []


def test_no_word_is_allowed_that_is_not_used() -> None:
    used = {word for text in told() for words in sentences(text.text) for word in words}
    assert used >= CAPITALS_WITHIN | FIRST_WORDS
    assert not {word for word in FIRST_WORDS if word.lower() in small_words()}


@pytest.mark.parametrize(
    "text",
    ["Fill with Zyxolon.", "Zyxolon goes in first.", "Use the ZyxoCut tip.", "Done. Zyxolon next."],
)
def test_a_product_would_be_found(text: str) -> None:
    assert any("yxo" in word for word in unlooked_at([text], small_words()))
