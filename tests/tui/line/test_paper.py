from __future__ import annotations

from io import BytesIO, TextIOWrapper

import pytest
from chamberwise.tui.line.paper import Paper, in_ascii
from hypothesis import given
from hypothesis import strategies as st


def test_signs_are_spelt_where_the_stream_cannot_say_them() -> None:
    stream = TextIOWrapper(raw := BytesIO(), encoding="ascii")
    Paper(stream, 78).say("“Fill” – 0.1 µl, naïve … → ≤ 3")
    assert raw.getvalue() == b'"Fill" - 0.1 ul, naive ... -> <= 3\n'


@pytest.mark.parametrize("encoding", ["utf-8", "UTF8", "utf_8"])
def test_utf_8_is_left_as_it_is(encoding: str) -> None:
    stream = TextIOWrapper(raw := BytesIO(), encoding=encoding)
    Paper(stream, 78).say("“Fill”")
    assert raw.getvalue().decode() == "“Fill”\n"


@given(st.text())
def test_any_text_can_be_said_in_ascii(text: str) -> None:
    in_ascii(text).encode("ascii")
