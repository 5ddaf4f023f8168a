"""Beside an editor: processor time from a save to each part, on the largest pathway and its sheet.

The reference is the same found from scratch by a program that is started for it.
"""

from __future__ import annotations

import shutil
import tempfile
import time
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import load_library, read_file
from chamberwise.tui.drafting import Draft, draft_of, draft_of_sheet, read_again, stamps
from chamberwise.tui.finding import Finder

from tests.bench.measure import Row

PROTOCOLS = Path(__file__).parents[2] / "protocols"
PATHWAY = "posterior-capsule-rupture.yaml"
SHEET = "demonstration/harbour-eye-unit.yaml"
DAY = date(2026, 11, 29)
AIM = "seen in 0.5 s"
EDITS = (
    ("a word", PATHWAY, "in quiet vitreous", "in still vitreous"),
    ("an arrow", PATHWAY, "go to: why-is-a-defect-feared\n", "go to: prepare-everyone\n"),
    ("an effect", PATHWAY, "    makes known: {lens: none}\n", ""),
    ("a phone of the sheet", SHEET, "extension X101", "extension X107"),
)


def rows() -> list[Row]:
    """Measure each edit on an editor's screen that is open already."""
    with tempfile.TemporaryDirectory() as folder:
        library = Path(folder) / "library"
        shutil.copytree(PROTOCOLS, library)
        return [_row(library, *each) for each in EDITS]


def _row(library: Path, what: str, file: str, was: str, now: str) -> Row:
    path = library / file
    whole = path.read_text(encoding="utf-8")
    begun = time.process_time()
    draft, finder = _opened(library, path), Finder(DAY)
    *_, cold = _laps(begun, finder, draft)
    if was not in whole:
        raise ValueError(f"{file} no longer says {was!r}")
    path.write_text(whole.replace(was, now, 1), encoding="utf-8")
    begun = time.process_time()
    draft = read_again(draft, stamps(draft.loaded.files))
    seen, checked, proved = _laps(begun, finder, draft)
    path.write_text(whole, encoding="utf-8")
    measured = f"seen {seen:.2f}, checked {checked:.2f}, proved {proved:.2f} s"
    return Row(f"write, {what}", measured, f"from scratch {cold:.2f} s", proved / cold, AIM)


def _opened(library: Path, path: Path) -> Draft:
    if path.parent == library:
        return draft_of(load_library(library), str(path))
    base, sheet = load_library(library), read_file(path)
    return draft_of_sheet(localised(base, sheet), base, sheet)


def _laps(begun: float, finder: Finder, draft: Draft) -> Iterator[float]:
    """Yield the time at which what is seen at once, every check, and the proof stand."""
    finder.at_once(draft)
    yield time.process_time() - begun
    found = finder.whole(draft)
    yield time.process_time() - begun
    finder.proof(draft, found)
    yield time.process_time() - begun
