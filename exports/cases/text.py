"""The table of cases as text: one block a case, so that no terminal is too narrow for it."""

from __future__ import annotations

from textwrap import fill

from chamberwise.exports.cases.content import ANY, CaseRow, CaseSheet

WIDTH = 78


def text(sheet: CaseSheet) -> str:
    """Return the table for reading top to bottom; equal rows have been put together before."""
    blocks = [f"{sheet.title}: table of cases", _notice()]
    if sheet.assumed:
        blocks.append("\n".join(["Assumed throughout:", *_assumed(sheet)]))
    blocks += [_block(number, row, sheet) for number, row in enumerate(sheet.rows, 1)]
    return "\n\n".join(blocks)


def _notice() -> str:
    return fill(
        "What the pathway leads to, not advice for a patient. Rehearsal and teaching only. "
        "Follow local protocol.",
        WIDTH,
    )


def _assumed(sheet: CaseSheet) -> list[str]:
    return [
        fill(f"{title}: {label}", WIDTH, initial_indent="   ", subsequent_indent="      ")
        for title, label in sheet.assumed
    ]


def _block(number: int, row: CaseRow, sheet: CaseSheet) -> str:
    lines = [f"{number}."]
    pairs = [*zip(sheet.findings, row.findings, strict=True)]
    lines += [
        fill(f"{head}: {label}", WIDTH, initial_indent="   ", subsequent_indent="      ")
        for head, label in pairs
        if label != ANY
    ]
    pairs = [*zip(sheet.columns, row.plan, strict=True), ("outcome", row.outcome)]
    lines += [_wrapped(f"{head}: {said}") for head, said in pairs if said]
    if row.remark:
        lines.append(_wrapped(row.remark))
    return "\n".join(lines)


def _wrapped(line: str) -> str:
    return fill(line, WIDTH, initial_indent="   -> ", subsequent_indent="      ")
