"""The kit list as plain text, for a screen reader."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.control.content import FOLLOW
from chamberwise.exports.kit.content import KitList, KitRow, by_pathway


def text(kit: KitList) -> str:
    """Return the list, one item a block."""
    return "\n".join(_lines(kit)) + "\n"


def _lines(kit: KitList) -> Iterator[str]:
    yield from (f"Kit: {kit.title}", FOLLOW, kit.unset)
    for title, rows in kit.parts:
        yield from ("", title)
        for row in rows:
            yield from _row(row)
            if kit.is_local:
                yield f"   here: {kit.local(row.product)}"
                yield f"   lies: {kit.local(row.place)}"
                yield f"   stock: {kit.local(row.stock)}"


def _row(row: KitRow) -> Iterator[str]:
    yield f"- {row.item}" + (f". Asked for: {row.amount}" if row.amount else "")
    if row.why:
        yield f"   why: {row.why}"
    for name, steps in by_pathway(row):
        over = f"handed over to {name}, for" if name else "for"
        yield f"   {over}: {steps}"
