"""The table of cases as text: one block a case, so that no terminal is too narrow for it."""

from __future__ import annotations

from textwrap import fill

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.cases.content import ANY, CaseRow, CaseSheet

WIDTH = 78


def text(sheet: CaseSheet) -> str:
    """Return the table for reading top to bottom; equal rows have been put together before."""
    blocks = [_("{title}: table of cases").format(title=sheet.title), _notice()]
    if sheet.assumed:
        blocks.append("\n".join([_("Assumed throughout:"), *_assumed(sheet)]))
    blocks += [_block(number, row, sheet) for number, row in enumerate(sheet.rows, 1)]
    if sheet.notes:
        blocks.append("\n".join(_notes(sheet)))
    if sheet.completeness:
        blocks.append(_filled(sheet.completeness))
    return "\n\n".join(blocks)


def _notice() -> str:
    return _filled(
        _(
            "What the pathway leads to, not advice for a patient. Rehearsal and teaching only. "
            "Follow local protocol."
        )
    )


def _assumed(sheet: CaseSheet) -> list[str]:
    return [_filled(f"{title}: {label}", "   ", "      ") for title, label in sheet.assumed]


def _notes(sheet: CaseSheet) -> list[str]:
    """Return what rows hang on: what stands behind each mark, and the marks that all rows have."""
    lines = [
        _filled(
            _(
                "What rows hang on: were it otherwise, the plan or the outcome of one of their "
                "combinations would be, with all else as assumed."
            )
        )
    ]
    lines += [_filled(note.text, f"{note.mark:>5}  ", " " * 10) for note in sheet.notes]
    if sheet.all_hang_on:
        lines.append(
            _filled(
                _("Every row hangs on {all_hang_on}.").format(
                    all_hang_on=" ".join(sheet.all_hang_on)
                )
            )
        )
    return lines


def _block(number: int, row: CaseRow, sheet: CaseSheet) -> str:
    lines = [f"{number}."]
    pairs = [*zip(sheet.findings, row.findings, strict=True)]
    lines += [
        _filled(f"{head}: {label}", "   ", "      ") for head, label in pairs if label != _(ANY)
    ]
    pairs = [*zip(sheet.columns, row.plan, strict=True), (_("outcome"), row.outcome)]
    lines += [_wrapped(f"{head}: {said}") for head, said in pairs if said]
    if row.marks:
        lines.append(_wrapped(_("hangs on: {marks}").format(marks=" ".join(row.marks))))
    lines += [_wrapped(remark) for remark in row.remarks]
    return "\n".join(lines)


def _wrapped(line: str) -> str:
    return _filled(line, "   -> ", "      ")


def _filled(line: str, first: str = "", later: str = "") -> str:
    """Return a line wrapped; names are kept whole."""
    return fill(line, WIDTH, initial_indent=first, subsequent_indent=later, break_on_hyphens=False)
