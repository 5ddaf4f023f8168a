"""The kit list as plain text, for a screen reader."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW
from chamberwise.exports.kit.content import KitList, KitRow, by_pathway


def text(kit: KitList) -> str:
    """Return the list, one item a block."""
    return "\n".join(_lines(kit)) + "\n"


def _lines(kit: KitList) -> Iterator[str]:
    yield from (_("Kit: {title}").format(title=kit.title), _(FOLLOW), kit.unset)
    for title, rows in kit.parts:
        yield from ("", title)
        for row in rows:
            yield from _row(row)
            if kit.is_local:
                yield _("   here: {local}").format(local=kit.local(row.product))
                yield _("   lies: {local}").format(local=kit.local(row.place))
                yield _("   stock: {local}").format(local=kit.local(row.stock))


def _row(row: KitRow) -> Iterator[str]:
    yield f"- {row.item}" + (
        _(". Asked for: {amount}").format(amount=row.amount) if row.amount else ""
    )
    if row.why:
        yield _("   why: {why}").format(why=row.why)
    for name, steps in by_pathway(row):
        over = _("handed over to {name}, for").format(name=name) if name else _("for")
        yield f"   {over}: {steps}"
