"""From a verdict and the register to what is told of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from pathlib import Path
from shlex import quote

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, Status
from chamberwise.engine.reading.library import shown
from chamberwise.engine.stamp.copies import Copy, Register, Snapshot
from chamberwise.engine.stamp.verdict import Current, Printable, Superseded, Unknown, Verdict
from chamberwise.exports.control.content import day
from chamberwise.exports.language.values import told
from chamberwise.exports.printing.sheet_name import sheet_asked_for, sheet_told
from chamberwise.exports.stamp.changes import changes, in_lines
from chamberwise.exports.stamp.content import CopyShown, StampShown, Worth
from chamberwise.exports.stamp.kept_words import approval_told
from chamberwise.exports.stamp.snapshot import approval, snapshot

GONE = N_("The library no longer has this pathway. Take the sheet down.")
NO_SNAPSHOT = N_("What it said is not kept in the register, so what changed cannot be told.")


def stamp_shown(found: Verdict, library: Library, register: Register, today: date) -> StampShown:
    """Return what is told of one stamp."""
    match found:
        case Current():
            return _current(found, library.pathways[found.printable.pathway], today)
        case Superseded():
            return _superseded(found, library, register)
        case Unknown():
            near = (
                (_("Did you mean {nearest}?").format(nearest=found.nearest),)
                if found.nearest
                else ()
            )
            said = (found.why, *near)
            return StampShown(found.typed, Worth.UNKNOWN, "", "", "", "", "", (), (), said)


def copies_shown(register: Register, now: Mapping[str, Printable]) -> tuple[CopyShown, ...]:
    """Return every registered copy and whether it is current, in the order printed."""
    return tuple(
        _copy(each, Worth.CURRENT if each.code in now else Worth.SUPERSEDED)
        for each in register.copies
    )


def _copy(copy: Copy, worth: Worth) -> CopyShown:
    return CopyShown(
        copy.code,
        copy.title,
        sheet_told(copy.sheet),
        copy.edition,
        copy.paper,
        copy.printed,
        copy.hangs,
        worth,
    )


def _current(found: Current, pathway: Pathway, today: date) -> StampShown:
    return StampShown(
        found.code,
        Worth.CURRENT,
        pathway.id,
        pathway.title,
        sheet_told(found.printable.sheet),
        pathway.edition,
        _edition(pathway),
        tuple(_copy(each, Worth.CURRENT) for each in found.copies),
        (),
        tuple(_cautions(pathway, today)),
    )


def _cautions(pathway: Pathway, today: date) -> Iterator[str]:
    """Say what a current sheet may lack all the same."""
    if pathway.status in (Status.SUPERSEDED, Status.WITHDRAWN):
        yield _("The pathway itself is marked {status}. Take the sheet down.").format(
            status=told(pathway.status)
        )
    elif not pathway.is_approved:
        yield _("Nobody has approved this pathway: it is a draft, not for clinical use.")
    if today > pathway.review_by:
        yield _("EXPIRED: it was to be reviewed by {review_by}.").format(
            review_by=day(pathway.review_by)
        )


def _superseded(found: Superseded, library: Library, register: Register) -> StampShown:
    last = found.copies[-1]
    pathway = library.pathways.get(last.pathway)
    changed: tuple[str, ...] = ()
    said: tuple[str, ...] = (_(GONE),)
    if pathway is not None:
        old = register.contents.get(last.content)
        if old is not None:
            now = snapshot(library, pathway.id)
            changed = (*_only_translated(old, now), *in_lines(changes(old, now)))
        said = tuple(_since(found, pathway, register.copies, has_old=old is not None))
    return StampShown(
        found.code,
        Worth.SUPERSEDED,
        last.pathway,
        last.title,
        sheet_told(last.sheet),
        last.edition,
        _edition(pathway) if pathway else "",
        tuple(_copy(each, Worth.SUPERSEDED) for each in found.copies),
        changed,
        said,
    )


def _only_translated(old: Snapshot, now: Snapshot) -> Iterator[str]:
    """Say so where the English says what it said: no step has to be learnt anew."""
    if old.source and old.source == now.source:
        yield _("Only the translation changed, or who stands for it: the English is the same.")


def _since(
    found: Superseded, pathway: Pathway, copies: Iterable[Copy], *, has_old: bool
) -> Iterator[str]:
    source = found.copies[-1].source
    if source and not Path(source).is_file():
        yield _(
            "It was printed from {source}, which is gone; the library's own is compared."
        ).format(source=source)
    if found.copies[-1].edition == pathway.edition:
        yield _("The edition is still called the same, though the content changed.")
    printed = [each.printed for each in copies if each.content == found.now]
    if printed:
        yield _("The new content was first printed here on {day}.").format(day=day(min(printed)))
    if not has_old:
        yield _(NO_SNAPSHOT)
    asked = quote(shown(Path(source))) if source and Path(source).is_file() else pathway.id
    yield _("Print it anew: {command}").format(
        command=f"chamberwise print {asked} {sheet_asked_for(found.copies[-1].sheet)}"
    )


def _edition(pathway: Pathway) -> str:
    """Return in words what the pathway is today, and since when."""
    return _("edition {edition}, reviewed {reviewed}, {approval}").format(
        edition=pathway.edition,
        reviewed=day(pathway.reviewed),
        approval=approval_told(approval(pathway)),
    )
