"""What comes of several names is the same side by side as one after the other, in their order."""

from __future__ import annotations

import os
import subprocess
import sys
import threading

import pytest
from chamberwise.tui.command.side_by_side import side_by_side

NAMES = ["long", "short", "middle"]
ALONE = """
import os, sys
from chamberwise.tui.command.side_by_side import side_by_side

def work(name):
    if name in sys.argv[1:]:
        raise ValueError(name)
    return name.upper(), os.getpid()

try:
    done = list(side_by_side(work, ["long", "short", "middle"]))
except ValueError as error:
    print("failed", error)
else:
    print([name for name, _ in done], os.getpid() in {process for _, process in done})
"""


def alone(*words: str) -> str:
    """Return what a process of its own says, which has no other thread."""
    command = [sys.executable, "-c", ALONE, *words]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout.strip()


def test_names_keep_their_order_in_processes_of_their_own() -> None:
    cores = len(os.sched_getaffinity(0)) if sys.platform == "linux" else 1
    assert alone() == f"['LONG', 'SHORT', 'MIDDLE'] {cores == 1}"


def test_what_goes_wrong_in_a_process_is_raised_in_the_first() -> None:
    assert alone("short") == "failed short"


@pytest.mark.parametrize("names", [[], ["long"], NAMES])
def test_beside_other_threads_one_is_worked_after_the_other(names: list[str]) -> None:
    done = threading.Event()
    other = threading.Thread(target=done.wait)
    other.start()
    try:
        assert list(side_by_side(lambda name: (name, os.getpid()), names)) == [
            (name, os.getpid()) for name in names
        ]
    finally:
        done.set()
        other.join()
