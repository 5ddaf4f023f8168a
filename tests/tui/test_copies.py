"""Work beside the first process: what comes of it, and what of copies that fail, die or are left.

Each case runs in a process of its own, which has no other thread.
"""

from __future__ import annotations

import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest
from chamberwise.tui.copies import Copies, can_copy

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="copies are made on Linux alone")
HEAD = """
import os, signal, sys, threading, time
from pathlib import Path
from chamberwise.tui import copies
from chamberwise.tui.copies import Copies

copies._cores = lambda: 2
FIRST = os.getpid()

def where(word):
    return word, os.getpid() == FIRST

def dies(word):
    if os.getpid() != FIRST:
        os.kill(os.getpid(), signal.SIGKILL)
    return where(word)

def fails(word):
    if word == "bad":
        raise ValueError(word)
    return where(word)

def sleeps(folder):
    (Path(folder) / str(os.getpid())).touch()
    time.sleep(60)

if __name__ == "__main__":
"""


def script(folder: Path, *lines: str) -> list[str]:
    """Return the command that runs some lines beside the functions above."""
    file = folder / "alone.py"
    file.write_text(HEAD + "".join(f"    {line}\n" for line in lines), encoding="utf-8")
    return [sys.executable, str(file)]


def said(folder: Path, *lines: str) -> str:
    done = subprocess.run(
        script(folder, *lines), capture_output=True, text=True, check=False, timeout=60
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def test_work_is_done_in_copies_and_comes_in_its_order(tmp_path: Path) -> None:
    told = said(
        tmp_path, "with Copies(9) as beside:", "    print(beside.count, *beside.each(where, 'abc'))"
    )
    assert told == "2 ('a', False) ('b', False) ('c', False)"


def test_what_a_copy_was_at_when_it_died_is_done_here(tmp_path: Path) -> None:
    told = said(tmp_path, "with Copies(1) as beside: print(*beside.each(dies, 'ab'))")
    assert told == "('a', True) ('b', True)"


def test_once_a_copy_has_died_all_that_follows_is_done_here(tmp_path: Path) -> None:
    told = said(
        tmp_path,
        "with Copies(1) as beside:",
        "    print(beside.begin(dies, 'a').result(), beside.begin(where, 'b').result())",
    )
    assert told == "('a', True) ('b', True)"


def test_what_fails_in_a_copy_fails_here_and_the_others_are_done(tmp_path: Path) -> None:
    told = said(
        tmp_path,
        "with Copies(1) as beside:",
        "    begun = [beside.begin(fails, each) for each in ('good', 'bad')]",
        "    print(begun[0].result())",
        "    try: begun[1].result()",
        "    except ValueError as error: print(repr(error))",
    )
    assert told.splitlines() == ["('good', False)", "ValueError('bad')"]


def test_a_thread_that_only_the_system_knows_of_keeps_copies_from_being_made(
    tmp_path: Path,
) -> None:
    told = said(
        tmp_path,
        "from chamberwise.exports.typesetting.measuring import Ruler, Word",
        "from chamberwise.exports.paper.sheet import Weight",
        "before = copies.can_copy()",
        "Ruler().measure((), [Word('n', 12.0, Weight.BOLD)])",
        "print(before, threading.active_count(), copies.can_copy())",
        "with Copies(2) as beside: print(*beside.each(where, 'a'))",
    )
    assert told.splitlines() == ["True 1 False", "('a', True)"]


def test_beside_another_thread_all_is_done_here() -> None:
    done = threading.Event()
    other = threading.Thread(target=done.wait)
    other.start()
    try:
        assert not can_copy()
        with Copies(2) as beside:
            assert (beside.count, list(beside.each(str, [1, 2]))) == (0, ["1", "2"])
    finally:
        done.set()
        other.join()


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_copies_end_with_the_first_process(tmp_path: Path, how: signal.Signals) -> None:
    command = script(
        tmp_path,
        f"with Copies(2) as beside: list(beside.each(sleeps, [{str(tmp_path)!r}] * 2))",
    )
    first = subprocess.Popen(command, stderr=subprocess.PIPE)
    marks = waited_for(lambda: [each for each in tmp_path.iterdir() if each.name.isdigit()], 2)
    first.send_signal(how)
    _, said_last = first.communicate(timeout=30)
    assert first.returncode != 0
    assert (b"KeyboardInterrupt" in said_last) == (how is signal.SIGINT)
    for mark in marks:
        assert is_gone(int(mark.name))


def waited_for(look, count: int) -> list[Path]:  # type: ignore[no-untyped-def]
    """Return what is looked for once there are so many."""
    end = time.monotonic() + 30
    while len(found := look()) < count:
        assert time.monotonic() < end
        time.sleep(0.02)
    return list(found)


def is_gone(process: int) -> bool:
    """Whether a process ends within a while."""
    end = time.monotonic() + 30
    while time.monotonic() < end:
        try:
            stat = Path(f"/proc/{process}/stat").read_text(encoding="utf-8")
        except OSError:
            return True
        if stat.rpartition(")")[2].split()[0] == "Z":
            return True
        time.sleep(0.02)
    return False
