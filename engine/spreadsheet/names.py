"""Names in a sheet of steps that nothing bears: told by row and column."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import CANNOT_TELL, Outcome
from chamberwise.engine.model.words import Words
from chamberwise.engine.spreadsheet.cells import Cells, Row, split
from chamberwise.engine.spreadsheet.steps import OR, Steps


def check_names(found: Cells, made: Steps, library: Library) -> None:
    """Add a problem for every name that neither the sheet nor the shared words have."""
    words = made.words.over(library.shared)
    tables: dict[str, Mapping[str, object]] = {
        "who": words.duties,
        "act": words.acts,
        "finding": words.findings,
        "after that": made.steps,
    }
    first = Row(0, {})
    for row in found.rows:
        if row["row"] in ("question", "hand over"):
            first = row
        tables["go to"] = library.pathways if row["row"] == "hand over" else made.steps
        for head, table in tables.items():
            if row[head]:
                _is_known(row, head, row[head], table, found)
        for name in split(row["sources"], ";"):
            _is_known(row, "sources", name, words.sources, found)
        _of_part(row, first, words, library, found)


def _of_part(row: Row, first: Row, words: Words, library: Library, found: Cells) -> None:
    """Look up what an answer stands for, and the outcome that a handover comes back by."""
    if row["row"] == "answer" and first["finding"] in words.findings:
        values = {value.id: value for value in words.findings[first["finding"]].values}
        for name in split(row["value"], OR) or (row["name"],):
            if name != CANNOT_TELL:
                _is_known(row, "value" if row["value"] else "name", name, values, found)
    if row["row"] == "back" and first["go to"] in library.pathways:
        steps = library.pathways[first["go to"]].steps.values()
        outcomes = {each.id: each for each in steps if isinstance(each, Outcome)}
        _is_known(row, "name", row["name"], outcomes, found)


def _is_known(row: Row, head: str, name: str, table: Mapping[str, object], found: Cells) -> None:
    if name not in table:
        advice = did_you_mean(name, table, _there_are(table))
        found.wrong(row, head, _("there is no `{name}`").format(name=name), advice)


def _there_are(names: Iterable[str]) -> str:
    some = [f"`{name}`" for name in names][:5]
    return (
        _("There is {names} and so on.").format(names=", ".join(some))
        if some
        else _("There is none yet.")
    )
