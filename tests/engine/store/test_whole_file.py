"""A file is written whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from chamberwise.engine.store.whole_file import write_whole


class FaultError(Exception):
    """Something that goes wrong while writing."""


def test_a_new_file_and_its_folders_are_made(tmp_path: Path) -> None:
    path = tmp_path / "new" / "folder" / "file.txt"
    write_whole(path, "naïve\n")
    assert path.read_bytes() == "naïve\n".encode()


def test_an_old_file_is_replaced_and_keeps_its_rights(tmp_path: Path) -> None:
    path = tmp_path / "file.txt"
    path.write_text("old")
    path.chmod(0o640)
    write_whole(path, "new")
    assert path.read_text() == "new"
    assert path.stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize("failing", ["fsync", "replace", "chmod", "fdopen"])
def test_where_writing_fails_the_old_file_stands_and_nothing_is_left(
    failing: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "file.txt"
    path.write_text("old")

    def fail(*_: object, **__: object) -> None:
        raise FaultError

    monkeypatch.setattr(os, failing, fail)
    with pytest.raises(FaultError):
        write_whole(path, "new")
    monkeypatch.undo()
    assert path.read_text() == "old"
    assert os.listdir(tmp_path) == ["file.txt"]


def test_the_new_text_is_on_disk_before_it_takes_the_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "file.txt"
    path.write_text("old")
    seen: list[tuple[str, str]] = []
    real_replace, real_fsync = os.replace, os.fsync

    def fsync(handle: int) -> None:
        real_fsync(handle)
        seen.append(("on disk", path.read_text()))

    def replace(source: str, target: Path) -> None:
        seen.append((Path(source).read_text(), target.read_text()))
        real_replace(source, target)

    monkeypatch.setattr(os, "fsync", fsync)
    monkeypatch.setattr(os, "replace", replace)
    write_whole(path, "new")
    assert seen == [("on disk", "old"), ("new", "old")]


def test_text_that_cannot_be_encoded_leaves_the_old_file(tmp_path: Path) -> None:
    path = tmp_path / "file.txt"
    path.write_text("old")
    with pytest.raises(UnicodeEncodeError):
        write_whole(path, "\udc80")
    assert path.read_text() == "old"
    assert os.listdir(tmp_path) == ["file.txt"]
