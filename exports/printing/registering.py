"""What was printed, as the register keeps it."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.stamp.copies import Copy, Snapshot
from chamberwise.engine.stamp.verdict import Current, Superseded
from chamberwise.exports.printing.order import Kind, Order
from chamberwise.exports.printing.sheet_name import sheet_name
from chamberwise.exports.stamp.snapshot import snapshot

LONGEST_PLACE = 120


class NoPlaceError(ValueError):
    """What was typed is no place to hang a sheet; `args[0]` says why."""


def place(typed: str) -> str:
    """Return where a sheet hangs, on one line. Raises `NoPlaceError`.

    >>> place(" Theatre 2,  circulating side ")
    'Theatre 2, circulating side'
    """
    told = " ".join(typed.split())
    if len(told) > LONGEST_PLACE:
        raise NoPlaceError(
            _("A place has at most {most} letters; this has {count}.").format(
                most=LONGEST_PLACE, count=len(told)
            )
        )
    if not told.isprintable():
        raise NoPlaceError(_("A place is plain text; this holds signs that cannot be seen."))
    return told


def copy_of(kind: Kind, order: Order, hangs: str = "", source: str = "") -> Copy:
    """Return the copy that an order makes."""
    return Copy(
        code=order.control.code,
        pathway=order.pathway,
        title=order.control.title,
        edition=order.control.edition,
        sheet=sheet_name(kind),
        paper=str(order.sized),
        printed=order.made,
        content=content_digest(order.library, order.pathway),
        hangs=hangs,
        source=source,
    )


def found_copy(
    found: Current | Superseded, library: Library, today: date
) -> tuple[Copy, Snapshot | None]:
    """Return a copy that was found hanging: as the last one registered, or as one printed now.

    With it comes its content, where that is what the pathway says now.
    """
    if isinstance(found, Superseded):
        return found.copies[-1], None
    pathway = library.pathways[found.printable.pathway]
    kept = snapshot(library, pathway.id)
    if found.copies:
        return found.copies[-1], kept
    printable = found.printable
    copy = Copy(
        found.code,
        pathway.id,
        pathway.title,
        pathway.edition,
        printable.sheet,
        "",
        today,
        printable.content,
    )
    return copy, kept
