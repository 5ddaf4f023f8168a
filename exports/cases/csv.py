"""The table of cases as CSV for a spreadsheet."""

from __future__ import annotations

import csv
from io import StringIO

from chamberwise.exports.cases.content import CaseSheet
from chamberwise.exports.cases.hangs import HangRow, OtherRow

_FORMULA = ("=", "+", "-", "@")


def csv_text(sheet: CaseSheet) -> str:
    """Return one line a case; nothing in it can be taken for a formula."""
    stream = StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    heads = [*sheet.findings, *sheet.columns, "outcome", "remark", "acts", "hangs on", "not asked"]
    writer.writerow([_plain(head) for head in heads])
    for row in sheet.rows:
        cells = [*row.findings, *row.plan, row.outcome, " ".join(row.remarks), " ".join(row.acts)]
        cells += ["; ".join(_hang(each) for each in row.hangs_on), " ".join(row.not_asked)]
        writer.writerow([_plain(cell) for cell in cells])
    return stream.getvalue().rstrip("\n")


def _hang(hang: HangRow) -> str:
    """Return e.g. `assumed stage=nucleus (cortex: plan, outcome)`."""
    others = " / ".join(_other(each) for each in hang.others)
    return f"{hang.kind} {hang.finding}={hang.value} ({others})"


def _other(other: OtherRow) -> str:
    once = f" once {other.once[0]}={other.once[1]}" if other.once else ""
    return f"{other.value}{once}: {', '.join(other.changes)}"


def _plain(cell: str) -> str:
    line = " ".join(cell.splitlines()).strip()
    return f"'{line}" if line.startswith(_FORMULA) else line
