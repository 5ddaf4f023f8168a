"""Journals on disk: every line safe, every torn line counted, one writer at a time."""

from __future__ import annotations

import os
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.engine.store.journal_file import (
    ENDING,
    InUseError,
    append,
    kept,
    load,
    new_path,
    writing,
)
from chamberwise.engine.walk.codec import encode
from chamberwise.engine.walk.entries import Began, Entry, Moved, Noted

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
BEGAN = Began(NOW, "one", "0.1", "digest")
ENTRIES: tuple[Entry, ...] = (BEGAN, Moved(NOW, Answered("dry")), Moved(NOW, Done()))


def test_what_is_appended_reads_back(tmp_path: Path) -> None:
    path = tmp_path / f"one{ENDING}"
    append(path, ENTRIES[:1])
    append(path, ENTRIES[1:])
    assert load(path).entries == ENTRIES
    assert load(path).torn == 0
    assert path.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("cut", range(1, len(encode(ENTRIES[-1])) + 1, 7))
def test_a_torn_line_costs_itself_and_nothing_else(cut: int, tmp_path: Path) -> None:
    path = tmp_path / f"one{ENDING}"
    append(path, ENTRIES)
    path.write_bytes(path.read_bytes()[: -cut - 1])
    assert load(path).entries == ENTRIES[:-1]
    assert load(path).torn == (1 if cut < len(encode(ENTRIES[-1])) else 0)
    more = Noted(NOW, "after the interruption")
    append(path, (more,))
    assert load(path).entries == (*ENTRIES[:-1], more)


def test_a_line_that_only_lacks_its_end_is_not_lost(tmp_path: Path) -> None:
    path = tmp_path / f"one{ENDING}"
    append(path, ENTRIES)
    path.write_bytes(path.read_bytes()[:-1])
    more = Noted(NOW, "after")
    append(path, (more,))
    assert load(path).entries == (*ENTRIES, more)
    assert load(path).torn == 0


def test_bytes_that_are_no_text_are_counted(tmp_path: Path) -> None:
    path = tmp_path / f"one{ENDING}"
    append(path, ENTRIES)
    with path.open("ab") as stream:
        stream.write(b"\xff\x00\xfe\n\n\n{}\n")
    assert load(path).entries == ENTRIES
    assert load(path).torn == 2


def test_a_note_with_odd_characters_is_kept(tmp_path: Path) -> None:
    path = tmp_path / f"one{ENDING}"
    notes = tuple(Noted(NOW, text) for text in ("a\nb", "\u2028", "\r", "\x85", "\udc80", "\x00"))
    append(path, (BEGAN, *notes))
    assert load(path).entries == (BEGAN, *notes)


def test_lines_are_on_disk_when_append_returns(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / f"one{ENDING}"
    synced: list[bytes] = []
    monkeypatch.setattr(os, "fsync", lambda handle: synced.append(path.read_bytes()))
    append(path, ENTRIES)
    assert synced == [path.read_bytes()]


def test_a_write_that_takes_several_turns_is_finished(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / f"one{ENDING}"
    real_write = os.write
    monkeypatch.setattr(os, "write", lambda to, text: real_write(to, text[:5]))
    append(path, ENTRIES)
    assert load(path).entries == ENTRIES


def test_two_writers_do_not_meet(tmp_path: Path) -> None:
    path = tmp_path / "walks" / f"one{ENDING}"
    with writing(path), pytest.raises(InUseError), writing(path):
        pass
    with writing(path):
        pass


def test_another_program_does_not_get_it_either(tmp_path: Path) -> None:
    path = tmp_path / f"one{ENDING}"
    program = (
        "import sys\n"
        "from pathlib import Path\n"
        "from chamberwise.engine.store.journal_file import InUseError, writing\n"
        "try:\n"
        "    with writing(Path(sys.argv[1])): print('held')\n"
        "except InUseError: print('in use')\n"
    )

    def other() -> str:
        command = [sys.executable, "-c", program, str(path)]
        return subprocess.run(command, capture_output=True, text=True, check=True).stdout.strip()

    with writing(path):
        assert other() == "in use"
    assert other() == "held"


def test_a_fault_while_writing_lets_go(tmp_path: Path) -> None:
    path = tmp_path / f"one{ENDING}"
    with pytest.raises(ZeroDivisionError), writing(path):
        raise ZeroDivisionError
    with writing(path):
        pass


def test_no_two_journals_share_a_path(tmp_path: Path) -> None:
    first = new_path(tmp_path, "one", NOW)
    assert first.name == f"one-20261125T093000-1{ENDING}"
    first.touch()
    assert new_path(tmp_path, "one", NOW).name == f"one-20261125T093000-2{ENDING}"


def test_journals_come_newest_first_and_others_are_left_out(tmp_path: Path) -> None:
    for number, name in enumerate(["one", "one-more", "one"]):
        path = new_path(tmp_path, name, NOW)
        append(path, (Began(NOW, name, "0.1", str(number)), *ENTRIES[1:]))
        os.utime(path, (number, number))
    (tmp_path / f"torn{ENDING}").write_text("{")
    (tmp_path / f"empty{ENDING}").touch()
    (tmp_path / "else.txt").touch()

    def digests(pathway: str | None = None) -> list[str]:
        found = [journal.entries[0] for journal in kept(tmp_path, pathway)]
        return [began.digest for began in found if isinstance(began, Began)]

    assert digests() == ["2", "1", "0"]
    assert digests("one") == ["2", "0"]
    assert digests("one-more") == ["1"]
    assert digests("three") == []
    assert list(kept(tmp_path / "not there")) == []
