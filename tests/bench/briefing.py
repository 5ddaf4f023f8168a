"""How long a long list takes to brief."""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

from chamberwise.engine.brief.listing import read_list
from chamberwise.engine.brief.stock import read_stock
from chamberwise.engine.brief.work import brief
from chamberwise.tui.command.finding_files import shipped

from tests.bench.measure import Row

ROWS = 500


def rows() -> list[Row]:
    """Measure a long list; the reference is a tenth of it, ten times."""
    _, long = min(seconds() for _ in range(3))
    _, short = min(seconds(ROWS // 10) for _ in range(3))
    measured, reference = (
        f"{long:.2f} s of processor",
        f"ten lists of {ROWS // 10}: {10 * short:.2f} s",
    )
    return [Row(f"brief of {ROWS} cases", measured, reference, long / (10 * short), "under 1 s")]


def long_list(folder: Path, rows: int) -> Path:
    """Write a list of so many cases, made of the demonstration's own."""
    head, *cases = (shipped() / "demonstration" / "list.csv").read_text("utf-8").splitlines()
    lines = [head]
    for place in range(rows):
        _, _, rest = cases[place % len(cases)].partition(",")
        lines.append(f"{place + 1},{rest}")
    path = folder / "long.csv"
    path.write_text("\n".join(lines), encoding="utf-8")
    return path


def seconds(rows: int = ROWS) -> tuple[float, float]:
    """Return seconds of the wall clock and of the processor for reading and briefing a list."""
    stock = read_stock(shipped() / "demonstration" / "stock.yaml").stock
    assert stock is not None
    with tempfile.TemporaryDirectory() as folder:
        path = long_list(Path(folder), rows)
        wall, processor = time.perf_counter(), time.process_time()
        listed = read_list(path).listed
        assert listed is not None
        made = brief(listed, stock)
    assert len(made.cases) == rows
    return time.perf_counter() - wall, time.process_time() - processor
