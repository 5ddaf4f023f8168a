"""Drills on disk: nothing that was shown is ever lost, whenever the program is killed."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from datetime import UTC, datetime
from pathlib import Path

from chamberwise.engine.drill.entries import Began, Did, Mode, Resumed
from chamberwise.engine.store.drill_file import (
    append_entries,
    kept_drills,
    load_drill,
    new_drill_path,
)

from tests.support.thorough import THOROUGH

BEGAN = datetime(2026, 11, 25, tzinfo=UTC)
KILLS = 1000 if THOROUGH else 12
WRITER = """
import sys
from datetime import UTC, datetime
from pathlib import Path
from chamberwise.engine.drill.entries import Began, Did, Mode
from chamberwise.engine.store.drill_file import append_entries
path = Path(sys.argv[1])
began = Began(datetime(2026, 11, 25, tzinfo=UTC), "drawn", 1, "one", "0.1", "digest", Mode.RUN)
append_entries(path, [began])
number = 0
while True:
    number += 1
    append_entries(path, [Did(number, f"act-{number}", "surgeon", "typed \\u2013 words " * 20)])
    print(number, flush=True)
"""


def test_no_entry_that_was_shown_is_lost_to_a_kill(tmp_path: Path) -> None:
    """Killed at random moments: every entry shown is there, in order, at most one line is torn."""
    moments = random.Random(11)
    for kill in range(KILLS):
        path = tmp_path / f"one-{kill}.drill.jsonl"
        with subprocess.Popen(
            [sys.executable, "-c", WRITER, str(path)], stdout=subprocess.PIPE, text=True
        ) as writer:
            assert writer.stdout is not None
            first = writer.stdout.readline()
            time.sleep(moments.random() * 0.02)
            writer.send_signal(signal.SIGKILL)
            shown = [first, *writer.stdout.read().splitlines()]
        numbers = [int(each) for each in shown if each.strip().isdigit()]
        kept = load_drill(path)
        acts = [each.act for each in kept.entries if isinstance(each, Did)]
        assert acts == [f"act-{number}" for number in range(1, len(acts) + 1)]
        assert len(acts) >= max(numbers)
        assert kept.torn <= 1


def test_what_is_added_after_a_torn_line_stands_on_its_own(tmp_path: Path) -> None:
    path = tmp_path / "one-1.drill.jsonl"
    append_entries(path, [Did(1, "hold-tip-still", "surgeon")])
    with path.open("ab") as stream:
        stream.write(b'{"is":"Did","at":2,"ac')
    append_entries(path, [Did(3, "withdraw-tip", "surgeon")])
    kept = load_drill(path)
    assert [getattr(each, "act", "") for each in kept.entries] == ["hold-tip-still", "withdraw-tip"]
    assert kept.torn == 1


def command(home: Path, *words: str) -> list[str]:
    return [sys.executable, "-m", "chamberwise.tui.command.main", "drill", *words]


def environment(home: Path) -> dict[str, str]:
    return {**os.environ, "CHAMBERWISE_HOME": str(home), "TERM": "dumb", "COLUMNS": "80"}


def at_a_terminal(home: Path, words: list[str], lines: list[str], *, kill: int) -> str:
    """Type lines at a terminal of its own, then send the program a signal; return what it said."""
    import pty

    child, terminal = pty.fork()
    if child == 0:
        os.execvpe(sys.executable, command(home, *words), environment(home))
    said = _until(terminal, "time goes by:")
    os.write(terminal, b"\n")
    said += _until(terminal, ">")
    for line in lines:
        os.write(terminal, f"{line}\n".encode())
        told = _until(terminal, "= Done")
        if ">" not in told.partition("= Done")[2]:  # both may come at once
            told += _until(terminal, ">")
        said += told
    os.kill(child, kill)
    os.waitpid(child, 0)
    os.close(terminal)
    return said


def _until(terminal: int, wanted: str) -> str:
    import select

    said = ""
    end = time.monotonic() + 60
    while wanted not in said:
        assert time.monotonic() < end, f"waited for {wanted!r} after {said!r}"
        if select.select([terminal], [], [], 0.2)[0]:
            said += os.read(terminal, 4096).decode(errors="replace")
    return said


def test_a_drill_that_was_killed_goes_on_where_it_stood_and_no_longer_counts(
    tmp_path: Path,
) -> None:
    """T6 of the stories: the lid closes, or the program is killed."""
    words = ["posterior-capsule-rupture", "--scenario", "fifth-of-six", "--seed", "7", "--plain"]
    words += ["--mode", "run"]
    for kill in (signal.SIGKILL, signal.SIGHUP):
        home = tmp_path / kill.name
        at_a_terminal(home, words, ["hold still", "stop aspirating"], kill=kill)
        before = next(kept_drills(home / "drills"))
        assert [e.act for e in before.entries if isinstance(e, Did)] == [
            "hold-tip-still",
            "stop-aspiration",
        ]
        said = at_a_terminal(home, ["--resume", "--plain"], ["call for help"], kill=signal.SIGKILL)
        after = next(kept_drills(home / "drills"))
        assert "no longer counts" in said
        assert "Hold the tip still in the eye" in said.partition("So far")[2]
        assert after.entries[: len(before.entries)] == before.entries
        assert any(isinstance(each, Resumed) for each in after.entries)
        assert isinstance(after.entries[0], Began)
        times = [each.at for each in after.entries]
        assert times == sorted(times)


def test_a_pathway_whose_name_begins_another_has_its_own_drills_alone(tmp_path: Path) -> None:
    for name in ("leak", "leak-late"):
        path = new_drill_path(tmp_path, name, BEGAN)
        append_entries(path, [Began(BEGAN, "drawn", 1, name, "0.1", "digest", Mode.RUN)])
    assert [each.entries[0] for each in kept_drills(tmp_path, "leak")] == [
        Began(BEGAN, "drawn", 1, "leak", "0.1", "digest", Mode.RUN)
    ]
