"""A working as text, nothing wider than 76 columns but a long line of numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.words import Source
from chamberwise.engine.working.form import STANDING
from chamberwise.engine.working.marks import told_mark
from chamberwise.engine.working.working import Heading, Line, Step, Table, Told, Working
from chamberwise.exports.flow.lines import in_lines

WIDTH = 76
"""Columns, so that a terminal of 80 shows it whole between its edges."""
ASSUMED = N_(" (assumed)")


def text(working: Working) -> str:
    """Return what a calculation says: figures first, then every line, then what to know."""
    return "\n".join(_lines(working))


def _lines(working: Working) -> Iterator[str]:
    yield working.title.upper()
    yield from _wrapped(" ".join(map(_, STANDING)))
    yield from ("", _("Given"))
    yield from _given(working.given)
    yield from ("", _("Result"))
    yield from _in_columns([(each.title, each.shown) for each in working.results])
    for table in working.tables:
        yield from ("", *_table(table))
    yield from ("", _("Working"))
    yield from lines_of(working)
    yield from _list(_("To know"), working.remarks)
    yield from _list(_("It does not know"), working.limits)
    yield from _list(_("Caution"), working.cautions)
    yield from _list(_("Sources"), [_source(each) for each in working.sources])
    yield ""
    yield from _wrapped(" ".join(map(_, STANDING)))


def _given(given: Sequence[Told]) -> Iterator[str]:
    yield from _in_columns(
        [
            (
                f"{each.name} ({each.symbol})" if each.symbol else each.name,
                f"{each.value}{_(ASSUMED) if each.assumed else ''}",
            )
            for each in given
        ]
    )


def lines_of(working: Working) -> Iterator[str]:
    """Yield the lines of working alone, each in symbols, in numbers, and what it comes to."""
    for each in working.lines:
        match each:
            case Heading(title=title):
                yield from ("", f"  {title}")
            case Step(text=said):
                yield from _wrapped(said, "  ")
            case Line():
                yield from _line(each)


def _line(line: Line) -> Iterator[str]:
    pad = "  " + " " * len(line.symbol)
    yield from _wrapped(f"{line.symbol} = {line.formula}", "  ", f"{pad}   ")
    if line.numbers not in (line.formula, line.shown):
        yield from _wrapped(f"= {line.numbers}", f"{pad} ", f"{pad}   ")
    yield f"{pad} = {line.shown} {line.unit}".rstrip() + f"    {line.title}"


def _table(table: Table) -> Iterator[str]:
    yield table.title
    widths = [
        max(len(row[place]) for row in (table.heads, *table.rows))
        for place in range(len(table.heads))
    ]
    fits = sum(widths) + 2 * len(widths) <= WIDTH
    if fits:
        for row in (table.heads, *table.rows):
            cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
            yield ("  " + "  ".join(cells)).rstrip()
        return
    for row in table.rows:
        first, *rest = row
        yield from _wrapped(first, "  - ", "    ")
        for head, cell in zip(table.heads[1:], rest, strict=True):
            if not cell:
                continue
            yield from _wrapped(f"{head}: {cell}", "      ", "        ")


def _source(source: Source) -> str:
    parts = (f"({told_mark(source.mark.value)}) {source.cite}", source.where, source.note)
    return ". ".join(each.rstrip(".") for each in parts if each)


def _in_columns(rows: Sequence[tuple[str, str]]) -> Iterator[str]:
    width = min(max((len(name) for name, _rest in rows), default=0), 40)
    for name, value in rows:
        yield from _wrapped(value, f"  {name.ljust(width)}  ", " " * (width + 4))


def _list(title: str, texts: Sequence[str]) -> Iterator[str]:
    if texts:
        yield from ("", title)
        for each in texts:
            yield from _wrapped(each, "  - ", "    ")


def _wrapped(said: str, first: str = "", rest: str | None = None) -> list[str]:
    return in_lines(said, WIDTH, first, first if rest is None else rest) or [first.rstrip()]
