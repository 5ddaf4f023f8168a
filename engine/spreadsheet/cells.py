"""From the bytes of a CSV file to rows of cells under known heads, with every problem told.

Commas, semicolons and tabs are told apart by the line of heads; a byte order mark, either end of
line and quoted cells over several lines are read as spreadsheets write them.
"""

from __future__ import annotations

import csv
from collections.abc import Sequence
from dataclasses import dataclass, field
from io import StringIO

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import source_text

HEADS = (
    "row",
    "name",
    "text",
    "who",
    "act",
    "finding",
    "value",
    "go to",
    "at most",
    "after that",
    "when",
    "phase",
    "short",
    "why",
    "about",
    "sign",
    "sources",
)
"""Every head, in the order in which they are written."""
NEEDED = ("row", "name", "text")
NAMES = ("row", "name", "who", "act", "finding", "value", "go to", "after that", "phase", "about")
"""What stands under them is a name in small letters, whatever a spreadsheet made of its first."""
_OF_TWO_WORDS = ("cannot tell", "hand over")
DELIMITERS = (",", ";", "\t")
MOST_ROWS = 20_000
FORMULA = ("=", "+", "-", "@", "'")
"""A cell that begins so is written behind an apostrophe, lest a spreadsheet computes it."""


@dataclass(frozen=True, slots=True)
class CellProblem:
    """What is wrong in one cell: the row as a spreadsheet counts it, the heads being row 1."""

    row: int
    column: str
    message: str
    advice: str


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its number and what stands under each head, trimmed; empty cells are left out."""

    number: int
    cells: dict[str, str]

    def __getitem__(self, head: str) -> str:
        return self.cells.get(head, "")


@dataclass(slots=True)
class Cells:
    """What a file holds, and every problem found so far."""

    rows: list[Row] = field(default_factory=list)
    problems: list[CellProblem] = field(default_factory=list)

    def wrong(self, row: Row | int, column: str, message: str, advice: str) -> None:
        """Keep a problem."""
        number = row if isinstance(row, int) else row.number
        self.problems.append(CellProblem(number, column, message, advice))


def cells_of(data: bytes, name: str) -> Cells:
    """Return the rows of a CSV file; without rows where the problems say why."""
    found = Cells()
    text, problems = source_text.decode(data, name)
    if text is not None:
        problems = source_text.refusals(text, name)
    for each in problems:
        line = each.span.line if each.span else 1
        advice = _("Save it from the spreadsheet as CSV UTF-8 (comma delimited).")
        found.wrong(line, "", each.message, each.advice if text is not None else advice)
    if text is not None and not problems:
        _read(text, found)
    return found


def _read(text: str, found: Cells) -> None:
    delimiter = _delimiter(text)
    reader = csv.reader(StringIO(text, newline=""), delimiter=delimiter, strict=True)
    number = 0
    try:
        heads: list[str] = []
        for number, cells in enumerate(reader, 1):
            if number == 1:
                heads = _heads(cells, found)
                if not heads:
                    return
            elif number > MOST_ROWS:
                found.wrong(
                    number, "", _("there are more rows than any pathway has"), _("Split it.")
                )
                return
            else:
                _row(number, heads, cells, found)
    except csv.Error as error:
        advice = _("Look for a quotation mark that is never closed, or one inside a cell.")
        found.wrong(
            number + 1, "", _("the row cannot be read: {error}").format(error=error), advice
        )


def _delimiter(text: str) -> str:
    first = text.splitlines()[0] if text else ""
    return max(DELIMITERS, key=lambda each: sum(_head(cell) in HEADS for cell in first.split(each)))


def _head(cell: str) -> str:
    return " ".join(cell.strip().strip('"').lower().replace("_", " ").split())


def _heads(cells: Sequence[str], found: Cells) -> list[str]:
    heads = [_head(cell) for cell in cells]
    for cell, head in zip(cells, heads, strict=True):
        if head and head not in HEADS:
            advice = did_you_mean(
                head, HEADS, _("The heads are: {heads}.").format(heads=", ".join(HEADS))
            )
            found.wrong(
                1,
                cell.strip(),
                _("`{head}` is no head of a column").format(head=cell.strip()),
                advice,
            )
        elif head and heads.count(head) > 1:
            found.wrong(
                1,
                head,
                _("`{head}` stands over two columns").format(head=head),
                _("Keep one of them."),
            )
    for head in NEEDED:
        if head not in heads:
            found.wrong(
                1,
                head,
                _("there is no column `{head}`").format(head=head),
                _("The first row holds the heads."),
            )
    return [] if found.problems else heads


def _row(number: int, heads: Sequence[str], cells: Sequence[str], found: Cells) -> None:
    kept = {head: _plain(cell) for head, cell in zip(heads, cells, strict=False) if head}
    beyond = [cell for cell in cells[len(heads) :] if cell.strip()]
    if beyond:
        advice = _("Put quotation marks round a text that holds the sign between columns.")
        found.wrong(
            number,
            "",
            _("`{cell}` stands beyond the last column").format(cell=beyond[0].strip()),
            advice,
        )
    kept = {
        head: _begun_small(cell) if head in NAMES else cell for head, cell in kept.items() if cell
    }
    if kept:
        found.rows.append(Row(number, kept))


def _plain(cell: str) -> str:
    text = " ".join(cell.split())
    return text[1:] if text[:1] == "'" and text[1:2] in FORMULA else text


def _begun_small(cell: str) -> str:
    """Return a name as it is, where a spreadsheet wrote its first letter large."""
    small = cell[:1].lower() + cell[1:]
    is_named = " " not in small.replace(" or ", "") or small in _OF_TWO_WORDS
    return small if is_named else cell


def written(rows: Sequence[dict[str, str]]) -> str:
    """Return rows as CSV under the heads that they use."""
    heads = [head for head in HEADS if head in NEEDED or any(row.get(head) for row in rows)]
    stream = StringIO()
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(heads)
    for row in rows:
        writer.writerow([_safe(row.get(head, "")) for head in heads])
    return stream.getvalue()


def _safe(cell: str) -> str:
    return f"'{cell}" if cell.startswith(FORMULA) else cell


def split(cell: str, by: str) -> tuple[str, ...]:
    """Return the parts of a cell, empty ones left out."""
    return tuple(part.strip() for part in cell.split(by) if part.strip())
