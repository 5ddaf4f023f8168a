"""The table of cases as CSV for a spreadsheet."""

from __future__ import annotations

import csv
from io import StringIO

from chamberwise.exports.cases.content import CaseSheet

_FORMULA = ("=", "+", "-", "@")


def csv_text(sheet: CaseSheet) -> str:
    """Return one line a case; nothing in it can be taken for a formula."""
    stream = StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    heads = [*sheet.findings, *sheet.columns, "outcome", "remark", "acts"]
    writer.writerow([_plain(head) for head in heads])
    for row in sheet.rows:
        cells = [*row.findings, *row.plan, row.outcome, row.remark, " ".join(row.acts)]
        writer.writerow([_plain(cell) for cell in cells])
    return stream.getvalue().rstrip("\n")


def _plain(cell: str) -> str:
    line = " ".join(cell.splitlines()).strip()
    return f"'{line}" if line.startswith(_FORMULA) else line
