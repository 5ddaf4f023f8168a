"""Sheets from a cold command to a file, and how the laying out grows with the pathway.

The reference is a process of its own that has the same typesetter set one word in the same font.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from chamberwise.exports.audit.audit import audit
from chamberwise.exports.full.make import make_from
from chamberwise.exports.typesetting.compiling import to_pdf

from tests.bench.measure import Row, peak_megabytes, seconds
from tests.exports.audit.sheets import wall
from tests.exports.full.made_up import made_up, order

FLAGSHIP = "posterior-capsule-rupture"
RUN = [sys.executable, "-m", "chamberwise.tui.command.main", "print", FLAGSHIP]
ONE_WORD = """
import typst
from chamberwise.exports.typesetting.compiling import fonts
words = b'#set text(font: "Inter")\\nWord'
typst.Compiler(font_paths=fonts(), ignore_system_fonts=True).compile(input=words, format="pdf")
"""
SIZES = (30, 100, 300)


def rows() -> list[Row]:
    """Measure commands first, then the laying out of made-up pathways in this process."""
    one_word = [sys.executable, "-c", ONE_WORD]
    took = seconds(one_word, 3)
    with tempfile.TemporaryDirectory() as folder:
        found = _commands(folder, took)
        found.append(_memory(_printing("pack", folder), one_word))
    return [*found, _audit(), *_growth()]


def _audit() -> Row:
    """Measure the audit of one page against the making of that page."""
    case = wall()
    made, audited = [], []
    for _ in range(3):
        start = time.perf_counter()
        to_pdf(case.sheet)
        made.append(time.perf_counter() - start)
        start = time.perf_counter()
        audit(case.sheet, case.pdf, case.terms)
        audited.append(time.perf_counter() - start)
    reference = f"its making {min(made) * 1000:.0f} ms"
    took = min(audited)
    return Row("audit one page", f"{took:.2f} s", reference, took / min(made), "under 0.3 s")


def _printing(what: str, folder: str) -> list[str]:
    out = str(Path(folder) / f"{what}.pdf")
    return [*RUN, "--what", what, "--no-register", "--overwrite", "--out", out]


def _commands(folder: str, one_word: float) -> list[Row]:
    pack = _printing("pack", folder)
    wanted: tuple[tuple[str, Sequence[str], str], ...] = (
        ("print wall chart, A3", _printing("wall-chart", folder), "under 1.5 s"),
        ("print full pathway", _printing("full", folder), ""),
        ("print pack", pack, "under 6 s"),
        ("print pack, nothing cached", ["env", "HOME=/dev/null", "XDG_CACHE_HOME=", *pack], ""),
    )
    reference = f"one word {one_word * 1000:.0f} ms"
    found = []
    for name, command, aim in wanted:
        took = seconds(command, 3)
        found.append(Row(name, f"{took:.2f} s", reference, took / one_word, aim))
    return found


def _memory(command: Sequence[str], one_word: Sequence[str]) -> Row:
    peak, least = peak_megabytes(command), peak_megabytes(one_word)
    reference = f"one word {least:.0f} MB"
    return Row("print pack, peak", f"{peak:.0f} MB", reference, peak / least, "under 400 MB")


def _growth() -> list[Row]:
    """Measure each size against the smallest, step for step: 1.0 is linear growth."""
    made = {size: _layout(size) for size in SIZES}
    each = made[SIZES[0]] / SIZES[0]
    reference = f"{each * 1000:.1f} ms a step at {SIZES[0]}"
    aims = {SIZES[-1]: "under 5 s, ratio under 2"}
    return [
        Row(
            f"lay out {size} steps",
            f"{took:.2f} s",
            reference,
            took / size / each,
            aims.get(size, ""),
        )
        for size, took in made.items()
    ]


def _layout(size: int) -> float:
    """Return the best seconds of three, each with a ruler that has measured nothing yet."""
    content = made_up(size)
    best = float("inf")
    for _ in range(3):
        given = order()
        start = time.perf_counter()
        make_from(content, given)
        best = min(best, time.perf_counter() - start)
    return best
