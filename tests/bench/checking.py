"""Reading and checking synthetic pathways: linear growth, and against a plain YAML load."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from tests.bench.measure import Row, peak_megabytes, seconds
from tests.bench.synthetic import synthetic

RUN = [sys.executable, "-m", "chamberwise.tui.command.main", "check"]
PLAIN = "import sys, yaml; yaml.safe_load(open(sys.argv[1], encoding='utf-8'))"
SIZES = (1_000, 10_000)


def rows() -> list[Row]:
    """Measure two sizes; the reference is PyYAML's own loader on the same file."""
    found = []
    with tempfile.TemporaryDirectory() as folder:
        library = Path(folder) / "library"
        library.mkdir()
        for size in SIZES:
            path = Path(folder) / "synthetic.yaml"
            path.write_text(synthetic(size), encoding="utf-8")
            command = [*RUN, str(path), "--library", str(library)]
            took = seconds(command, 3)
            plain = seconds([sys.executable, "-c", PLAIN, str(path)], 1)
            aim = "under 5 s, 500 MB" if size == SIZES[-1] else ""
            measured = f"{took:.2f} s, {peak_megabytes(command):.0f} MB"
            reference = f"yaml.safe_load {plain:.2f} s"
            found.append(Row(f"check {size:,} steps", measured, reference, took / plain, aim))
    return found
