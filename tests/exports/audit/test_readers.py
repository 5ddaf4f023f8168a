"""Two readers that know nothing of each other read the same page."""

from __future__ import annotations

import pytest
from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.printed.read import UnreadableError, read
from chamberwise.exports.audit.rules.printing.text_kept import letters

from tests.exports.audit.sheets import Case, card, tiled, wall


@pytest.mark.parametrize("case", [wall(), card(), tiled()], ids=["wall", "card", "tile"])
def test_both_readers_agree_on_words_sizes_and_boxes(case: Case) -> None:
    printed = read(case.pdf)
    for first, second in zip(printed.leaves, printed.seconds, strict=True):
        assert letters("".join(each.text for each in first.stretches)) == letters(second.text)
        assert {round(each.size, 1) for each in first.stretches} == second.sizes
        assert (first.width, first.height) == pytest.approx((second.width, second.height), abs=0.01)


def test_what_is_read_is_what_was_placed() -> None:
    case = wall()
    leaf = read(case.pdf).leaves[0]
    asked = next(each for each in leaf.stretches if each.text.startswith("Is vitreous"))
    assert (asked.size, asked.ink, asked.font) == (24.0, "#000000", "Inter-Regular")
    assert asked.origin[0] == pytest.approx(63, abs=0.01)
    assert asked.origin[1] == pytest.approx(150 + 0.8 * 24 * 25.4 / 72, abs=0.01)
    assert leaf.pictures == 0


@pytest.mark.parametrize("rubbish", [b"", b"%PDF-1.7", b"hello", b"\x00" * 100])
def test_bytes_that_are_no_pdf_are_refused_in_words(rubbish: bytes) -> None:
    with pytest.raises(UnreadableError, match="cannot be read back"):
        read(rubbish)


def test_a_file_with_fewer_pages_than_the_sheet_is_found() -> None:
    case = wall()
    doubled = case.sheet.pages * 2
    longer = case.__class__(case.sheet.__class__(**{**fields(case), "pages": doubled}), case.terms)
    report = audit(longer.sheet, case.pdf, case.terms)
    assert "1 pages too many or too few" in {each.measured for each in report.of("PRT-01")}


def fields(case: Case) -> dict[str, object]:
    sheet = case.sheet
    names = ("title", "subject", "language", "made", "pages")
    return {name: getattr(sheet, name) for name in names}
