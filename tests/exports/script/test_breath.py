"""One line a breath: no word lost, none too long, no quantity parted."""

from __future__ import annotations

from itertools import pairwise

import pytest
from chamberwise.exports.script.breath import MOST_SECONDS, MOST_WORDS, breaths
from chamberwise.exports.script.syllables import A_SECOND, syllables
from hypothesis import given
from hypothesis import strategies as st

SAID = "fill the chamber viscoelastic and, with 10 mg per mL stop. 2 % or a"
word = st.sampled_from(SAID.split())


@given(st.lists(word, min_size=1, max_size=40))
def test_breaths_say_the_same_words_in_order(said: list[str]) -> None:
    found = breaths(" ".join(said))
    assert " ".join(found).replace("\u00a0", " ").split() == said


@given(st.lists(word, min_size=1, max_size=40))
def test_no_breath_is_longer_than_a_breath_unless_it_cannot_be_parted(said: list[str]) -> None:
    for each in breaths(" ".join(said)):
        if " " in each:
            assert len(each.split()) <= MOST_WORDS
            assert syllables(each) <= MOST_SECONDS * A_SECOND


@given(st.lists(word, min_size=1, max_size=20))
def test_no_breath_ends_inside_a_quantity(said: list[str]) -> None:
    found = breaths(" ".join(said))
    for one, after in pairwise(found):
        assert one.split()[-1] not in ("10", "2", "per")
        assert after.split()[0] not in ("%", "per")


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("Hold still.", ("Hold still.",)),
        (
            "Fill the chamber with dispersive viscoelastic through the side port.",
            ("Fill the chamber with dispersive viscoelastic", "through the side port."),
        ),
        ("Stop. Help please.", ("Stop. Help please.",)),
    ],
)
def test_breaths_end_where_a_clause_does(said: str, found: tuple[str, ...]) -> None:
    assert breaths(said) == found


@pytest.mark.parametrize(
    ("said", "count"),
    [
        ("vitreous", 3),
        ("viscoelastic", 5),
        ("capsule", 2),
        ("10 mg", 5),
        ("θάλαμο", 3),
        ("глаз", 1),
    ],
)
def test_syllables_are_about_right(said: str, count: int) -> None:
    assert abs(syllables(said) - count) <= 1
    assert syllables(said) >= 1
