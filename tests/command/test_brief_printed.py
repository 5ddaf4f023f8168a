"""A brief on one page: its audit, its stamp, and what does not fit."""

from __future__ import annotations

from pathlib import Path

from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status
from pypdf import PdfReader

from tests.command.briefing import HEADS, ROW, Seen, listed, refused, shelf_in


def test_a_brief_is_printed_on_one_page_without_an_error(tmp_path: Path, capsys: Seen) -> None:
    path = tmp_path / "brief.pdf"
    assert run(["brief", "--out", str(path), "--date", "2026-11-29", "--report"]) == Status.FINDINGS
    seen = capsys.readouterr()
    assert str(path) in seen.out
    assert "\n0 errors" in seen.out
    pages = PdfReader(path).pages
    assert len(pages) == 1
    text = " ".join(pages[0].extract_text().split())
    for said in ("DRAFT: NOT APPROVED", "Follow local protocol", "invented", "Check by hand"):
        assert said in text
    assert all(f" {label} " in text for label in "ABCDE")


def test_the_same_brief_has_the_same_bytes_and_its_stamp_is_known(
    tmp_path: Path, capsys: Seen
) -> None:
    paths = [tmp_path / "one.pdf", tmp_path / "two.pdf"]
    for path in paths:
        run(["brief", "--out", str(path), "--date", "2026-11-29"])
    assert paths[0].read_bytes() == paths[1].read_bytes()
    code = capsys.readouterr().err.split("Stamp of the brief: ")[1].split("\n")[0]
    assert run(["brief", "--stamp", code.lower()]) == Status.CLEAN
    assert run(["--language", "de", "brief", "--stamp", code]) == Status.CLEAN, (
        "known in every language"
    )
    assert "current" in capsys.readouterr().out
    assert run(["brief", "--stamp", code, "--stop-word", "Hold"]) == Status.FINDINGS
    assert "not current" in capsys.readouterr().out
    assert run(["brief", "--stamp", "AAAA"]) == Status.UNUSABLE


def test_a_short_list_and_large_paper_are_set_in_larger_type(tmp_path: Path, capsys: Seen) -> None:
    """Small letters of a tenth of an inch are preferred in the hand (LEG-05)."""
    short = [listed(tmp_path, HEADS, ROW), "--stock", shelf_in(tmp_path)]
    for place, words in enumerate(([*short, "--paper", "A4"], ["--paper", "A3"])):
        run(["brief", *words, "--out", str(tmp_path / f"{place}.pdf"), "--report"])
        assert "LEG-05  kept" in capsys.readouterr().out


def test_more_than_a_page_is_refused_with_each_way_out(tmp_path: Path, capsys: Seen) -> None:
    rows = [ROW.replace("A,", f"{place},", 1) for place in range(1, 31)]
    words = [listed(tmp_path, HEADS, *rows), "--stock", shelf_in(tmp_path)]
    found = refused([*words, "--out", str(tmp_path / "long.pdf")], capsys)
    assert "more than one page" in found
    assert "Part the list" in found
    assert not (tmp_path / "long.pdf").exists()


def test_a_strangers_file_is_not_written_over(tmp_path: Path, capsys: Seen) -> None:
    path = tmp_path / "letter.pdf"
    path.write_bytes(b"mine")
    assert "none of our sheets" in refused(["--out", str(path)], capsys)
    assert path.read_bytes() == b"mine"
