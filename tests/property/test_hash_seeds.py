"""The same under every hash seed: no order of a set or of a dictionary's hashes comes out."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

TOP = Path(__file__).resolve().parents[2]


def made_under(seed: str) -> str:
    environment = {**os.environ, "PYTHONHASHSEED": seed}
    command = [sys.executable, "-m", "tests.support.fingerprint"]
    made = subprocess.run(
        command, cwd=TOP, env=environment, capture_output=True, text=True, check=True
    )
    return made.stdout.strip()


def test_the_same_comes_out_under_every_hash_seed() -> None:
    first = made_under("0")
    assert len(first) == 64
    assert made_under("1") == first
    assert made_under("random") == first
