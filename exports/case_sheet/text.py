"""The case table as plain text, for a screen reader: one row a block, every cell with its name."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.case_sheet.content import (
    IMPOSSIBLE,
    STANDING,
    CaseTablePaper,
    Row,
    Section,
)
from chamberwise.exports.control.content import FOLLOW


def text(table: CaseTablePaper) -> str:
    """Return the table from top to bottom."""
    return "\n".join(_lines(table)) + "\n"


def _lines(table: CaseTablePaper) -> Iterator[str]:
    yield from (_("{title}: cases and plans").format(title=table.title), _(FOLLOW), _(STANDING))
    for section in table.sections:
        yield from _section(table.columns, section)
    yield from ("", _("What rows hang on"))
    yield from (f"{mark}: {said}" for mark, said in table.notes)
    if table.all_hang_on:
        yield _("Every row hangs on {all_hang_on}.").format(all_hang_on=" ".join(table.all_hang_on))
    yield from ("", _(IMPOSSIBLE))
    for one in table.impossible:
        yield f"{one.when}. {one.told}"
    yield from ("", _("Taken for granted"))
    yield from (f"{name}: {said}" for name, said in table.assumed)
    yield from ("", table.completeness)


def _section(columns: tuple[str, ...], section: Section) -> Iterator[str]:
    yield ""
    for head in section.heads:
        yield ". ".join(f"{name}: {said}" for name, said in head.findings)
        yield from (
            _("plan, {name}: {said}").format(name=name, said=said) for name, said in head.plans
        )
        if head.marks:
            yield _("each row hangs on {marks}").format(marks=" ".join(head.marks))
    yield from (f"   {_row(columns, row)}" for row in section.rows)


def _row(columns: tuple[str, ...], row: Row) -> str:
    pairs = zip(columns, row.cells, strict=True)
    told = [f"{name}: {said}" for name, said in pairs]
    hangs = [_("hangs on {marks}").format(marks=" ".join(row.marks))] if row.marks else []
    return ". ".join([*told, *hangs, *([row.remark] if row.remark else [])])
