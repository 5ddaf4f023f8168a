from __future__ import annotations

import os
from pathlib import Path

import pytest
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.engine.reading.library import load_library
from chamberwise.engine.store.journal_file import InUseError, load
from chamberwise.tui.sitting import Sitting
from chamberwise.tui.unfinished import Unfinished, go_on, newest_unfinished

from tests.tui.stage import LIBRARY, Ticking, loaded, sitting


def found(folder: Path) -> Unfinished:
    unfinished = newest_unfinished(loaded(), "leaking-wound", folder)
    assert unfinished is not None
    return unfinished


def started(folder: Path, *typed: str) -> Sitting:
    walk = sitting(folder)
    for word in typed:
        walk.make(Done() if word == "done" else Answered(word))
    return walk


def test_only_looking_leaves_nothing_behind(tmp_path: Path) -> None:
    sitting(tmp_path).close()
    assert list(tmp_path.iterdir()) == []


def test_every_move_is_on_disk_before_the_walk_moves(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    walk = sitting(tmp_path)
    order: list[str] = []
    real = os.fsync

    def fsync(handle: int) -> None:
        real(handle)
        order.append(f"on disk at step {len(walk.walk.legs) + 1}")

    monkeypatch.setattr(os, "fsync", fsync)
    walk.make(Answered("fast"))
    order.append(f"moved to step {len(walk.walk.legs) + 1}")
    walk.undo()
    order.append(f"moved to step {len(walk.walk.legs) + 1}")
    assert order == [
        "on disk at step 1",
        "moved to step 2",
        "on disk at step 2",
        "moved to step 1",
    ]


def test_a_walk_goes_on_where_it_was_left(tmp_path: Path) -> None:
    walk = started(tmp_path, "fast", "done")
    walk.undo()
    walk.note("pupil small")
    walk.close()
    again = go_on(loaded(), found(tmp_path), Ticking())
    assert again.walk.state == walk.walk.state
    assert len(again.walk.taken_back) == 1
    again.redo()
    assert load(again.path or tmp_path).entries == again.walk.journal


def test_a_torn_last_line_is_left_out_and_mentioned(tmp_path: Path) -> None:
    walk = started(tmp_path, "fast", "done")
    walk.close()
    assert walk.path
    walk.path.write_bytes(walk.path.read_bytes()[:-9])
    unfinished = found(tmp_path)
    assert "half written" in unfinished.torn
    again = go_on(loaded(), unfinished, Ticking())
    assert len(again.walk.legs) == 1
    again.make(Done())
    again.close()
    assert found(tmp_path).steps == 2


def test_a_finished_walk_is_not_offered(tmp_path: Path) -> None:
    started(tmp_path, "none", "deep").close()
    assert newest_unfinished(loaded(), "leaking-wound", tmp_path) is None


def test_two_terminals_never_write_one_walk(tmp_path: Path) -> None:
    walk = started(tmp_path, "fast")
    with pytest.raises(InUseError):
        go_on(loaded(), found(tmp_path), Ticking())
    walk.close()
    go_on(loaded(), found(tmp_path), Ticking()).close()


def test_a_changed_pathway_is_refused(tmp_path: Path) -> None:
    started(tmp_path / "walks", "fast").close()
    changed = tmp_path / "library"
    (changed / "vocabulary").mkdir(parents=True)
    for path in [*LIBRARY.glob("*.yaml"), *LIBRARY.glob("vocabulary/*.yaml")]:
        text = path.read_text(encoding="utf-8").replace("Keep every", "Hold every")
        (changed / path.relative_to(LIBRARY)).write_text(text, encoding="utf-8")
    unfinished = newest_unfinished(load_library(changed), "leaking-wound", tmp_path / "walks")
    assert unfinished is not None
    assert unfinished.walk is None
    assert "its pathway has changed" in unfinished.changed


def test_a_walk_goes_on_without_history_where_nothing_can_be_written(tmp_path: Path) -> None:
    blocked = tmp_path / "blocked"
    blocked.write_text("a file where the folder should be")
    walk = started(blocked / "walks", "fast", "done")
    assert len(walk.walk.legs) == 2
    assert "is not kept" in walk.lost
    assert not walk.is_kept


def test_a_full_disk_in_the_middle_is_said_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    walk = started(tmp_path, "fast")

    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    walk.make(Done())
    monkeypatch.undo()
    walk.make(Answered("calm"))
    assert walk.lost == (
        "From here on this walk is not kept (No space left on device). "
        "It goes on without a history."
    )
    assert len(walk.walk.legs) == 3
