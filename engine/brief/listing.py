"""Reading a list for the day, from CSV or YAML. What looks like identity is refused."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from chamberwise.engine.brief import codes
from chamberwise.engine.brief.case import Case, CaseList, Head
from chamberwise.engine.brief.fields import (
    CASE,
    FIELDS,
    field,
    is_identity,
    is_label,
    unit_of,
    with_unit,
)
from chamberwise.engine.brief.form import LIST
from chamberwise.engine.brief.stock import head_of
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Span
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import source_text
from chamberwise.engine.reading.read import read
from chamberwise.engine.reading.tree import Listing, Table, Tree, parse

MOST = 2_000
DELIMITERS = (",", ";", "\t")
LABELS = N_(
    "Write a label for the day: a letter, a number, or both, as A, 3 or A3, and "
    "keep who it is elsewhere."
)


@dataclass(frozen=True, slots=True)
class ReadList:
    """The list, unless the file cannot be used; its problems and its text, to show them."""

    listed: CaseList | None
    problems: tuple[Problem, ...]
    texts: dict[str, str]


def read_list(path: Path) -> ReadList:
    """Return the list of a file and every problem of it."""
    shown_as = str(path)
    text, problems = source_text.load(path, shown_as)
    problems = [*problems, *(source_text.refusals(text, shown_as) if text is not None else ())]
    if text is None or problems:
        return ReadList(None, tuple(problems), {})
    reading = _of_yaml if path.suffix.lower() in (".yaml", ".yml") else _of_csv
    listed, found = reading(text, shown_as)
    if not found:
        found = list(_of_labels(listed.cases, shown_as))
    return ReadList(None if found else listed, tuple(found), {shown_as: text})


def _of_yaml(text: str, file: str) -> tuple[CaseList, list[Problem]]:
    tree = parse(text, file)
    _refuse_identity(tree)
    if tree.problems:
        return CaseList(Head(), ()), list(tree.problems)
    raw: dict[str, Any] = read(tree, LIST) or {}
    cases = tuple(_case(each) for each in raw.get("cases") or () if each)
    return CaseList(head_of(raw), cases), list(tree.problems)


def _case(raw: dict[str, str]) -> Case:
    written = {name: text for name, text in raw.items() if name != CASE}
    return Case(raw.get(CASE, ""), written)


def _refuse_identity(tree: Tree) -> None:
    root = tree.root
    cases = root.entries.get("cases") if isinstance(root, Table) else None
    listing = cases.value if cases else None
    for place, each in enumerate(listing.items if isinstance(listing, Listing) else ()):
        for key in each.entries if isinstance(each, Table) else ():
            if field(key) not in FIELDS and is_identity(key):
                at = ("cases", place, key)
                message = _("`{key}` looks like a patient's identity").format(key=key)
                tree.report(codes.IDENTITY.at(tree.file, at, tree.span(at), message, _delete(key)))


def _of_csv(text: str, file: str) -> tuple[CaseList, list[Problem]]:
    delimiter = max(DELIMITERS, key=text.partition("\n")[0].count)
    rows = csv.reader(text.splitlines(), delimiter=delimiter, strict=True)
    problems: list[Problem] = []
    cases: list[Case] = []
    try:
        heads = [each.strip() for each in next(rows, [])]
        problems += _of_heads(heads, file)
        fields = [field(each) for each in heads]
        units = [unit_of(each) for each in heads]
        for row in rows:
            if any(cell.strip() for cell in row):
                problems += _of_row(row, fields, rows.line_num, file)
                cells = (with_unit(*each) for each in zip(row, units, strict=False))
                written = dict(zip(fields, cells, strict=False))
                label = written.pop(CASE, "")
                cases.append(Case(label, {key: cell for key, cell in written.items() if cell}))
    except csv.Error as error:
        message = _("the row cannot be read: {error}").format(error=error)
        problems.append(_row(message, _("Look at the quotes of this row."), rows.line_num, file))
    if not cases and not problems:
        problems.append(_row(_("the list holds no case"), _("Add a row for each case."), 1, file))
    return CaseList(Head(), tuple(cases)), problems


def _of_heads(heads: list[str], file: str) -> Iterator[Problem]:
    seen: set[str] = set()
    for each in heads:
        name = field(each)
        span = Span(1, 1, 1, 2)
        if name not in FIELDS and is_identity(each):
            message = _("the column `{each}` looks like a patient's identity").format(each=each)
            yield codes.IDENTITY.at(file, (), span, message, _delete(each))
        elif name not in FIELDS:
            advice = did_you_mean(
                name, FIELDS, _("A list takes {fields}.").format(fields=", ".join(FIELDS))
            )
            message = (
                _("`{each}` is no column of a list").format(each=each)
                if each
                else _("a column has no head")
            )
            yield codes.COLUMN.at(file, (), span, message, advice)
        elif name in seen:
            yield codes.COLUMN.at(
                file,
                (),
                span,
                _("`{each}` stands twice").format(each=each),
                _("Delete one of them."),
            )
        seen.add(name)
    if CASE not in seen:
        message = _("there is no column `case`")
        yield codes.COLUMN.at(
            file, (), Span(1, 1, 1, 2), message, _("Add it. {labels}").format(labels=_(LABELS))
        )


def _of_row(row: list[str], fields: list[str], line: int, file: str) -> Iterator[Problem]:
    if len(row) != len(fields):
        message = _("{row} cells stand under {fields} heads").format(
            row=len(row), fields=len(fields)
        )
        advice = _("Write decimals with a point, and an empty cell where something is not known.")
        yield _row(message, advice, line, file)


def _of_labels(cases: tuple[Case, ...], file: str) -> Iterator[Problem]:
    if len(cases) > MOST:
        yield _row(
            _("{count} cases are no list of a day").format(count=len(cases)),
            _("Part the file."),
            1,
            file,
        )
    seen: set[str] = set()
    for number, each in enumerate(cases, start=1):
        if not is_label(each.label):
            message = _("the label of case {number} may name somebody, or is none").format(
                number=number
            )
            yield codes.IDENTITY.at(file, (), None, message, _(LABELS))
        elif each.label in seen:
            message = _("the label `{label}` stands twice").format(label=each.label)
            yield codes.ROW.at(file, (), None, message, _("Give each case a label of its own."))
        seen.add(each.label)


def _delete(head: str) -> str:
    return _("Delete `{head}` with all that stands under it. {labels}").format(
        head=head, labels=_(LABELS)
    )


def _row(message: str, advice: str, line: int, file: str) -> Problem:
    return codes.ROW.at(file, (), Span(line, 1, line, 2), message, advice)
