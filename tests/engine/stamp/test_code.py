"""The stamp: Crockford's published example, careless typing forgiven, mistakes noticed."""

from __future__ import annotations

import pytest
from chamberwise.engine.keys.base32 import SIGNS
from chamberwise.engine.stamp.code import (
    CHECK_SIGNS,
    MistypedError,
    read_stamp,
    stamp_of,
    stamp_of_number,
)
from hypothesis import given
from hypothesis import strategies as st

numbers = st.integers(0, 2**40 - 1)
contents = st.text("0123456789abcdef", min_size=64, max_size=64)


@pytest.mark.parametrize(
    ("number", "written"),
    [(0, "0000-0000-0"), (1234, "0000-016J-D"), (2**40 - 1, "ZZZZ-ZZZZ-F")],
)
def test_numbers_as_published(number: int, written: str) -> None:
    """1234 is 16J, and 16JD with its check sign, on the page that defines the notation."""
    assert stamp_of_number(number) == written
    assert CHECK_SIGNS.index(written[-1]) == number % 37


@given(contents, st.sampled_from(["wall-chart", "full"]))
def test_a_stamp_reads_back_and_is_easily_typed(content: str, sheet: str) -> None:
    code = stamp_of(content, sheet)
    assert read_stamp(code) == code
    assert len(code) == 11
    assert set(code) <= {*SIGNS, "-"}


@given(numbers)
def test_careless_typing_is_forgiven(number: int) -> None:
    code = stamp_of_number(number)
    careless = code.lower().replace("-", " ").replace("0", "o").replace("1", "l")
    assert read_stamp(careless) == code
    assert read_stamp(code.replace("-", "").replace("1", "I")) == code


@pytest.mark.parametrize("number", [0, 1234, 2**40 - 1, 0x12345ABCDE])
def test_every_sign_mistyped_and_every_two_neighbours_swapped_are_noticed(number: int) -> None:
    signs = stamp_of_number(number).replace("-", "")
    for at, right in enumerate(signs):
        for wrong in set(SIGNS) - {right}:
            with pytest.raises(MistypedError):
                read_stamp(signs[:at] + wrong + signs[at + 1 :])
    for at in range(len(signs) - 2):
        swapped = signs[:at] + signs[at + 1] + signs[at] + signs[at + 2 :]
        if swapped != signs:
            with pytest.raises(MistypedError):
                read_stamp(swapped)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("", "this has 0"),
        ("7QK2-M4XP", "this has 8"),
        ("0000-016J-DD", "this has 10"),
        ("0000-01UJ-D", "`U` never stands"),
        ("0000-01é6-D", "`É` never stands"),
        ("0000-016J-E", "typing error"),
        ("0000-016J-?", "typing error"),
    ],
)
def test_what_is_wrong_is_explained(typed: str, told: str) -> None:
    with pytest.raises(MistypedError, match=told.replace("?", r"\?")):
        read_stamp(typed)


@given(contents)
def test_another_kind_or_local_sheet_has_another_stamp(content: str) -> None:
    codes = {
        stamp_of(content, "wall-chart"),
        stamp_of(content, "full"),
        stamp_of(content, "full", "abc"),
    }
    assert len(codes) == 3
