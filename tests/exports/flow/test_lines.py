"""Lines of plain text: a number stays with its unit (ISMP, on doses parted over lines; memory)."""

from __future__ import annotations

import pytest
from chamberwise.exports.flow.lines import in_lines
from chamberwise.tui.present.parts import Part, text_lines


@pytest.mark.parametrize("width", range(20, 60))
def test_no_line_end_parts_a_number_from_its_unit(width: int) -> None:
    said = "On the shelf: 21 D (2 there, leaves -0.17 D); 22 D (1 there, leaves -0.88 D), 200 mg"
    for lines in (in_lines(said, width), text_lines([Part(said)], width)):
        assert " ".join(lines).split() == said.split()
        assert all(line.split()[0].strip(");,") not in ("D", "mg") for line in lines)


def test_a_word_as_long_as_the_line_keeps_its_indent() -> None:
    """An address fell back to the margin where it just filled the line."""
    for length in range(70, 80):
        lines = text_lines([Part("x" * length, "    ")], 76)
        assert all(line.startswith("    x") for line in lines)
