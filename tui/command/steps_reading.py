"""Reading a sheet of steps, with every problem told by row and column."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.tui.command.finding_files import UnusableError

if TYPE_CHECKING:
    from chamberwise.engine.model.library import Library
    from chamberwise.engine.spreadsheet.cells import CellProblem
    from chamberwise.engine.spreadsheet.steps import Steps


def steps_in(sheet: Path, library: Library) -> Steps:
    """Return what a sheet holds. Raises `UnusableError` with every problem there is."""
    from chamberwise.engine.spreadsheet.cells import cells_of
    from chamberwise.engine.spreadsheet.names import check_names
    from chamberwise.engine.spreadsheet.steps import steps_of

    try:
        data = sheet.read_bytes()
    except OSError as error:
        raise UnusableError(
            _("{sheet} cannot be read: {reason}.").format(sheet=sheet, reason=error.strerror)
        ) from error
    found = cells_of(data, str(sheet))
    made = steps_of(found)
    check_names(found, made, library)
    if not found.problems and not made.steps:
        found.wrong(1, "", _("there are no steps"), _("Add rows below the heads."))
    if found.problems:
        raise UnusableError(told(str(sheet), found.problems))
    return made


def told(sheet: str, problems: Iterable[CellProblem]) -> str:
    """Return problems in the order of the rows, each with its cell."""
    ordered = sorted(problems, key=lambda each: each.row)
    lines = [f"{sheet}: {_cell(each)}: {each.message}. {each.advice}" for each in ordered]
    count = ngettext(
        "{count} problem; nothing was written.",
        "{count} problems; nothing was written.",
        len(lines),
    ).format(count=len(lines))
    return "\n".join([*dict.fromkeys(lines), count])


def _cell(problem: CellProblem) -> str:
    if problem.column:
        return _("row {row}, column {column}").format(row=problem.row, column=problem.column)
    return _("row {row}").format(row=problem.row)
