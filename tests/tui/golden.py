"""Kept transcripts and screens. CHAMBERWISE_KEEP=1 writes them anew, to be read before a commit."""

from __future__ import annotations

import os
from pathlib import Path


def assert_as_kept(path: Path, text: str) -> None:
    if os.environ.get("CHAMBERWISE_KEEP"):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    assert text == path.read_text(encoding="utf-8")
