from __future__ import annotations

from datetime import UTC, datetime
from typing import get_args

import pytest
from chamberwise.engine.drill.codec import UnreadableEntryError, decode, encode
from chamberwise.engine.drill.entries import (
    Began,
    Certainty,
    Did,
    Ended,
    Ending,
    Entry,
    Level,
    Looked,
    Mode,
)
from hypothesis import given
from hypothesis import strategies as st

ENTRIES = st.one_of(
    *(
        st.from_type(kind).filter(lambda entry: "\ud800" not in repr(entry))
        for kind in get_args(Entry)
    )
)
NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)


@given(ENTRIES)
def test_every_entry_comes_back_as_it_was(entry: Entry) -> None:
    assert decode(encode(entry)) == entry


def test_a_line_is_short_and_readable() -> None:
    line = encode(Did(1200, "withdraw-tip", "surgeon", "pull it out", certainty=Certainty.SURE))
    assert line == (
        '{"is":"Did","at":1200,"act":"withdraw-tip","who":"surgeon","typed":"pull it out",'
        '"certainty":3}'
    )
    assert encode(Ended(5, Ending.GIVEN_UP)) == '{"is":"Ended","at":5,"how":"given up"}'


def test_what_is_left_out_is_as_usual() -> None:
    assert decode('{"is":"Did","at":1,"act":"cut","who":"surgeon"}') == Did(1, "cut", "surgeon")
    began = Began(NOW, "s", 1, "p", "0.1", "d", Mode.RUN, ("surgeon",))
    assert decode(encode(began)) == began


@pytest.mark.parametrize(
    "line",
    [
        "",
        "{",
        "[]",
        "null",
        '{"is":"Nothing"}',
        '{"is":"Did","at":"soon","act":"cut","who":"surgeon"}',
        '{"is":"Did","at":1,"act":"cut","who":"surgeon","level":9}',
        '{"is":"Did","at":1,"act":"cut","who":"surgeon","more":1}',
        '{"is":"Did","at":true,"act":"cut","who":"surgeon"}',
        '{"is":"Ended","at":1,"how":"well"}',
        '{"is":"Resumed","at":1,"on":"yesterday"}',
        "[" * 100_000,
    ],
)
def test_what_is_no_entry_is_refused(line: str) -> None:
    with pytest.raises(UnreadableEntryError):
        decode(line)


def test_a_look_that_showed_nothing_is_told_from_one_that_did() -> None:
    assert decode(encode(Looked(1, "vitreous", None, "surgeon"))) == Looked(
        1, "vitreous", None, "surgeon"
    )
    assert Level.MENU > Level.NUDGED
