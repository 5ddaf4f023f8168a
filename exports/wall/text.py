"""The wall chart as lines read from top to bottom, for a screen reader."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.control.content import NOT_SET
from chamberwise.exports.wall.content import Down, Row, Side, Wall


def text(content: Wall) -> str:
    """Return the chart in words; every arrow is said."""
    return "\n".join(_lines(content)) + "\n"


def _lines(content: Wall) -> Iterator[str]:
    yield content.title
    yield f"Use when: {content.use_when}"
    yield ""
    yield "First"
    for letter, one in zip("ABCD", content.first, strict=False):
        yield f"  {letter}. {one.headline}"
        yield from (f"     {task.who}: {task.text}" for task in one.lines)
        yield from (f"     {choice}" for choice in one.choices)
    yield ""
    yield "Then"
    if content.opening is not None:
        yield f"  First do step {content.opening.via} of the full pathway, and what follows there."
    for row in content.rows:
        yield from _row(row)
    yield ""
    yield "Who to call"
    yield from (f"  {call}. Phone: {number or NOT_SET}" for call, number in content.phones)
    yield ""
    if content.places:
        yield "Where it lies"
        yield from (f"  {each.item}: {each.told}." for each in content.places)
        yield ""
    yield "Safety notes"
    yield from (f"  {n.signal.upper()}: {n.harm} {n.instead}" for n in content.notes)
    if content.more_notes:
        yield f"  The full pathway has {content.more_notes} more."
    yield ""
    yield "Follow local protocol."


def _row(row: Row) -> Iterator[str]:
    yield f"  Row {row.number}. {row.text}"
    if row.down is not None:
        yield f"     {_label(row.down.label)}{_onward(row.number, row.down)}"
    for side in row.sides:
        yield f"     {_label(side.label)}{_side(side)}"


def _label(label: str) -> str:
    said = label.replace("\n", " ")
    return f"{said}: " if label else ""


def _onward(number: int, down: Down) -> str:
    first = f"first do step {down.via} of the full pathway, then " if down.via else ""
    return f"{first}go on to row {number + 1}."


def _side(side: Side) -> str:
    stop = side.stop
    parts = [*side.done]
    if side.boxes > bool(side.done) and stop.text:
        parts.append(f"ask “{stop.text}”" if stop.is_asked else stop.text)
    if stop.row:
        parts.append(f"go to row {stop.row}")
    if stop.full:
        parts.append(f"step {stop.full} of the full pathway")
    return "; then ".join(part.rstrip(".") for part in parts) + "."
