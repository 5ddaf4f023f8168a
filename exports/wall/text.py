"""The wall chart as lines read from top to bottom, for a screen reader."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW, NOT_SET
from chamberwise.exports.language.values import told
from chamberwise.exports.wall.content import Down, Row, Side, Wall


def text(content: Wall) -> str:
    """Return the chart in words; every arrow is said."""
    return "\n".join(_lines(content)) + "\n"


def _lines(content: Wall) -> Iterator[str]:
    yield content.title
    yield _("Use when: {use_when}").format(use_when=content.use_when)
    yield ""
    yield _("First")
    for letter, one in zip("ABCD", content.first, strict=False):
        yield f"  {letter}. {one.headline}"
        yield from (f"     {task.who}: {task.text}" for task in one.lines)
        yield from (f"     {choice}" for choice in one.choices)
    yield ""
    yield _("Then")
    if content.opening is not None:
        yield _("  First do step {via} of the full pathway, and what follows there.").format(
            via=content.opening.via
        )
    for row in content.rows:
        yield from _row(row)
    yield ""
    yield _("Who to call")
    yield from (
        _("  {call}. Phone: {number}").format(call=call, number=number or _(NOT_SET))
        for call, number in content.phones
    )
    yield ""
    if content.places:
        yield _("Where it lies")
        yield from (f"  {each.item}: {each.told}." for each in content.places)
        yield ""
    yield _("Safety notes")
    yield from (f"  {told(n.signal).upper()}: {n.harm} {n.instead}" for n in content.notes)
    if content.more_notes:
        yield _("  The full pathway has {number} more.").format(number=content.more_notes)
    yield ""
    yield _(FOLLOW)


def _row(row: Row) -> Iterator[str]:
    yield _("  Row {number}. {text}").format(number=row.number, text=row.text)
    if row.down is not None:
        yield f"     {_label(row.down.label)}{_onward(row.number, row.down)}"
    for side in row.sides:
        yield f"     {_label(side.label)}{_side(side)}"


def _label(label: str) -> str:
    said = label.replace("\n", " ")
    return f"{said}: " if label else ""


def _onward(number: int, down: Down) -> str:
    said = _("go on to row {number}.")
    if down.via:
        said = _("first do step {via} of the full pathway, then go on to row {number}.")
    return said.format(via=down.via, number=number + 1)


def _side(side: Side) -> str:
    stop = side.stop
    parts = [*side.done]
    if side.boxes > bool(side.done) and stop.text:
        parts.append(_("ask “{text}”").format(text=stop.text) if stop.is_asked else stop.text)
    if stop.row:
        parts.append(_("go to row {row}").format(row=stop.row))
    if stop.full:
        parts.append(_("step {full} of the full pathway").format(full=stop.full))
    return _("; then ").join(part.rstrip(".") for part in parts) + "."
