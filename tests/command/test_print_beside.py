"""What is printed is the same to the byte on one core as on several, and so is all that is said."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.exports.printing.test_reproducible import FROZEN, NAME
from tests.support.thorough import cases

CORES = sorted(os.sched_getaffinity(0)) if sys.platform == "linux" else [0]
pytestmark = pytest.mark.skipif(len(CORES) < 2, reason="there is one core alone")


def printed(
    folder: Path, cores: list[int], name: str, *words: str
) -> tuple[int, str, str, dict[str, bytes]]:
    """Return the status, what was said, and the files of a fresh process on some cores."""
    folder.mkdir()
    command = ["print", name, "--library", str(FROZEN), "--date", "2026-11-25", "--no-register"]
    done = subprocess.run(
        [sys.executable, "-m", "chamberwise.tui.command.main", *command, *words],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
        preexec_fn=lambda: os.sched_setaffinity(0, cores),
    )
    files = {each.name: each.read_bytes() for each in sorted(folder.iterdir())}
    return done.returncode, done.stdout, done.stderr, files


FEW = [
    (("--what", "wall-chart", "--report", "json"), 0, 1),
    (("--what", "pack", "--out", "pack.pdf"), 0, 1),
    (("--what", "kit-list", "--language", "de"), 0, 1),
    (("--tiles", "--what", "full"), 2, 0),
]
MORE = [
    (("--what", "pack", "--report", "json"), 0, 1),
    (("--distance", "9"), 1, 0),
    (("--what", "pack", "--distance", "9"), 1, 0),
]


@pytest.mark.parametrize(("words", "status", "files"), cases(FEW, MORE))
def test_one_core_or_two(tmp_path: Path, words: tuple[str, ...], status: int, files: int) -> None:
    one = printed(tmp_path / "one", CORES[:1], NAME, *words)
    two = printed(tmp_path / "two", CORES[:2], NAME, *words)
    assert one == two
    assert (one[0], len(one[3])) == (status, files), one[2]


def test_a_pathway_with_an_error_is_refused_alike_and_nothing_is_left(tmp_path: Path) -> None:
    file = tmp_path / "faulty.yaml"
    text = (FROZEN / f"{NAME}.yaml").read_text(encoding="utf-8")
    found = [line for line in text.splitlines() if line.strip().startswith("go to:")]
    file.write_text(text.replace(found[0], found[0].partition(":")[0] + ": nowhere"), "utf-8")
    one = printed(tmp_path / "one", CORES[:1], str(file))
    two = printed(tmp_path / "two", CORES[:2], str(file))
    assert one == two
    assert one[0] == 2
    assert "nowhere" in one[2]
    assert one[3] == {}
