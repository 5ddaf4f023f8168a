"""Names, marks, and what is never written over."""

from __future__ import annotations

import os
import zlib
from datetime import date
from pathlib import Path
from xml.etree import ElementTree

import pytest
from chamberwise.exports.paper.sheet import Page, Role, Run, Sheet, Style, Text
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.printing.files import (
    NotWrittenError,
    destination,
    paged,
    refuse_strangers,
    write,
)
from chamberwise.exports.printing.letters import covered, faults
from chamberwise.exports.printing.marking import MARK, is_ours, subject
from chamberwise.exports.printing.printing import Form, printed
from chamberwise.exports.typesetting.compiling import UnprintableError, to_pdf
from hypothesis import given
from hypothesis import strategies as st

TODAY = date(2026, 11, 25)
TOLD = subject([("wall chart", "7QK2-M4XP-3")])
STYLE = Style(12)


def sheet(*pages: str) -> Sheet:
    size = Sized(Paper.A4).format
    texts = [Text(20, 20, 150, 8, (Run(each),), STYLE, Role.TITLE) for each in pages]
    return Sheet("A & B <chart>", TOLD, "en", TODAY, tuple(Page(size, (each,)) for each in texts))


@pytest.mark.parametrize("form", [Form.PDF, Form.SVG, Form.PNG])
def test_every_form_is_known_again_and_a_stranger_is_not(form: Form, tmp_path: Path) -> None:
    contents = printed(sheet("One", "Two"), form)
    assert len(contents) == (1 if form is Form.PDF else 2)
    path = tmp_path / f"x{form.ending}"
    for content in contents:
        path.write_bytes(content)
        assert is_ours(path)
        refuse_strangers(path)
    path.write_bytes(contents[0].replace(MARK.encode(), b"Made by somebody else"))
    with pytest.raises(NotWrittenError, match="none of our sheets"):
        refuse_strangers(path)


def test_a_marked_drawing_says_its_title_and_is_well_formed() -> None:
    (drawing,) = printed(sheet("One"), Form.SVG)
    root = ElementTree.fromstring(drawing)
    names = [each.tag.rpartition("}")[2] for each in root][:2]
    assert names == ["title", "desc"]
    assert [root[0].text, root[1].text] == ["A & B <chart>", TOLD]


def test_a_marked_picture_is_whole_chunk_by_chunk() -> None:
    (picture,) = printed(sheet("One"), Form.PNG)
    at, kinds = 8, []
    while at < len(picture):
        length = int.from_bytes(picture[at : at + 4])
        body = picture[at + 4 : at + 8 + length]
        assert zlib.crc32(body) == int.from_bytes(picture[at + 8 + length : at + 12 + length])
        kinds.append(body[:4])
        at += 12 + length
    assert kinds[:3] == [b"IHDR", b"iTXt", b"iTXt"]
    assert kinds[-1] == b"IEND"


def test_where_files_go(tmp_path: Path) -> None:
    assert destination(None, "a", Form.PDF) == Path("a.pdf")
    assert destination(tmp_path, "a", Form.SVG) == tmp_path / "a.svg"
    assert destination(tmp_path / "b.PDF", "a", Form.PDF) == tmp_path / "b.PDF"
    with pytest.raises(NotWrittenError, match=r"does not end in \.png"):
        destination(tmp_path / "b.pdf", "a", Form.PNG)
    with pytest.raises(NotWrittenError, match="no folder"):
        destination(tmp_path / "nowhere" / "b.pdf", "a", Form.PDF)
    new = tmp_path / "new"
    assert destination(new, "a", Form.PDF, is_folder=True) == new / "a.pdf"
    with pytest.raises(NotWrittenError, match="no folder"):
        destination(new / "newer", "a", Form.PDF, is_folder=True)
    (tmp_path / "file").write_bytes(b"")
    for name, is_folder in (("file", True), ("file/a.pdf", False)):
        with pytest.raises(NotWrittenError, match="not a folder"):
            destination(tmp_path / name, "a", Form.PDF, is_folder=is_folder)
    assert paged(Path("a.png"), 1) == (Path("a.png"),)


def test_a_link_to_nowhere_and_a_folder_are_strangers(tmp_path: Path) -> None:
    (tmp_path / "link.pdf").symlink_to(tmp_path / "gone.pdf")
    (tmp_path / "folder.pdf").mkdir()
    for name in ("link.pdf", "folder.pdf"):
        with pytest.raises(NotWrittenError):
            refuse_strangers(tmp_path / name)
    refuse_strangers(tmp_path / "free.pdf")


def test_where_one_file_fails_the_new_ones_are_gone_and_the_old_stand(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    old = tmp_path / "old.svg"
    old.write_text("old")
    real, calls = os.replace, []

    def failing(source: str, target: Path) -> None:
        calls.append(target)
        if len(calls) == 3:
            raise OSError(28, "No space left on device")
        real(source, target)

    monkeypatch.setattr(os, "replace", failing)
    names = ["old.svg", "one.svg", "two.svg"]
    with pytest.raises(NotWrittenError, match="No space left"):
        write({tmp_path / name: b"new" for name in names})
    assert os.listdir(tmp_path) == ["old.svg"]


def test_letters_that_cannot_be_printed_are_told_once_with_their_place() -> None:
    found = faults(sheet("Fine", "漢 漢字", "Привет, ὑγιής"))
    assert [each.letter for each in found] == ["漢", "字"]
    assert "page 2, in “漢 漢字”" in str(found[0])
    (mirrored,) = faults(sheet("שלום"))
    assert "right to left" in str(mirrored)


letters = st.characters(codec="utf-8", exclude_categories=["C", "Z", "M"])


@given(letters)
def test_the_map_of_letters_agrees_with_what_prints(letter: str) -> None:
    """The printer itself refuses a letter that its font lacks."""
    try:
        to_pdf(sheet(f"x{letter}x"))
        is_refused = False
    except UnprintableError:
        is_refused = True
    assert is_refused != any(ord(letter) in group for group in covered())
