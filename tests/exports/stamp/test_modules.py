"""The square code: sizes of the standard, quiet zone, and what it says."""

from __future__ import annotations

import segno
from chamberwise.engine.stamp.code import stamp_of, stamp_of_number
from chamberwise.exports.stamp.modules import QUIET, modules, said
from hypothesis import given
from hypothesis import strategies as st

codes = st.text("0123456789abcdef", min_size=8).map(lambda each: stamp_of(each, "full"))


@given(codes)
def test_it_is_a_qr_code_of_version_2_with_its_quiet_zone(code: str) -> None:
    rows = modules(code)
    side = 25 + 2 * QUIET
    assert len(rows) == side
    assert {len(row) for row in rows} == {side}
    assert set("".join(rows)) == {"0", "1"}
    edge = "".join(rows[:QUIET] + rows[-QUIET:]) + "".join(
        row[:QUIET] + row[-QUIET:] for row in rows
    )
    assert set(edge) == {"0"}
    finder = rows[QUIET][QUIET : QUIET + 7]
    assert finder == "1" * 7


def test_it_says_the_command_and_withstands_damage() -> None:
    code = stamp_of_number(1234)
    assert said(code) == "CHAMBERWISE STAMP 0000-016J-D"
    square = segno.make(said(code), error="q", micro=False)
    assert square.version == 2
    assert square.error in ("Q", "H")
