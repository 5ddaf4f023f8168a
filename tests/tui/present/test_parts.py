from __future__ import annotations

from chamberwise.tui.present.parts import Part, text_lines
from hypothesis import given
from hypothesis import strategies as st

WORDS = st.text(alphabet="abcdé (),.", max_size=60)


def test_further_lines_hang_under_the_text() -> None:
    lines = text_lines([Part("one two three four five", "  - ")], 18)
    assert lines == ["  - one two three", "    four five"]


def test_a_lead_longer_than_the_line_is_wrapped_too() -> None:
    lines = text_lines([Part("the value", "A very long title of a finding: ", hang=2)], 20)
    assert max(map(len, lines)) <= 20
    assert " ".join(" ".join(lines).split()) == "A very long title of a finding: the value"


@given(WORDS, WORDS, st.integers(20, 90), st.sampled_from([None, 0, 2, 8]))
def test_no_line_is_too_wide_and_no_word_is_lost(
    lead: str, text: str, width: int, hang: int | None
) -> None:
    lines = text_lines([Part(text, lead, hang=hang)], width)
    assert all(len(line) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join((lead + text).split())
