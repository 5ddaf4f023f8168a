"""A working as CSV for a spreadsheet: one line a fact."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from io import StringIO

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import STANDING
from chamberwise.engine.working.marks import told_mark
from chamberwise.engine.working.working import Heading, Line, Step, Working

HEADS = ("part", "name", "title", "formula", "numbers", "value", "unit")
_FORMULA = ("=", "+", "-", "@", "\t")
_NUMBER_SIGNS = set("+-0123456789.")


def csv_text(working: Working) -> str:
    """Return one line a fact; nothing in it can be taken for a formula of the spreadsheet."""
    stream = StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(HEADS)
    for row in _rows(working):
        writer.writerow([_plain(cell) for cell in row])
    return stream.getvalue().rstrip("\n")


def _rows(working: Working) -> Iterator[tuple[str, ...]]:
    for given in working.given:
        assumed = "assumed" if given.assumed else ""
        yield ("given", given.name, given.meaning, assumed, "", given.value, "")
    for line in working.lines:
        yield _line(line)
    for result in working.results:
        value = "" if result.value is None else f"{result.value:f}"
        yield ("result", result.name, result.title, "", result.shown, value, "")
    for table in working.tables:
        for row in table.rows:
            cells = zip(table.heads, row, strict=True)
            told = "; ".join(f"{head}: {cell}" for head, cell in cells)
            yield ("table", table.title, told, "", "", "", "")
    for part, texts in (
        ("to know", working.remarks),
        ("does not know", working.limits),
        ("caution", working.cautions),
        ("source", [f"({told_mark(each.mark.value)}) {each.cite}" for each in working.sources]),
        ("standing", [_(each) for each in STANDING]),
    ):
        yield from ((part, "", each, "", "", "", "") for each in texts)


def _line(line: Line | Heading | Step) -> tuple[str, ...]:
    match line:
        case Heading(title=title):
            return ("working", "", title, "", "", "", "")
        case Step(text=said):
            return ("working", "", said, "", "", "", "")
        case _:
            return (
                "working",
                line.symbol,
                line.title,
                line.formula,
                line.numbers,
                f"{line.value:f}",
                line.unit,
            )


def _plain(cell: str) -> str:
    told = " ".join(cell.split())
    is_number = bool(told) and set(told) <= _NUMBER_SIGNS
    return f"'{told}" if told.startswith(_FORMULA) and not is_number else told
