"""Printing as asked for: from kinds and papers to files on disk and lines in the register."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Status as Standing
from chamberwise.engine.store import register_file
from chamberwise.exports.printing.files import (
    NotWrittenError,
    destination,
    paged,
    refuse_strangers,
    write,
)
from chamberwise.exports.printing.kinds import NotMadeError
from chamberwise.exports.printing.order import Kind, Order
from chamberwise.exports.printing.printing import (
    Form,
    UnfitSheetsError,
    printed,
    told_as_text,
)
from chamberwise.exports.printing.registering import copy_of
from chamberwise.exports.stamp.snapshot import snapshot
from chamberwise.exports.typesetting.compiling import UnprintableError
from chamberwise.tui.preparing import Document, Prepared, orders_of, prepared
from chamberwise.tui.present.words import status_word
from chamberwise.tui.wanted import UnusableOrderError as UnusableOrderError
from chamberwise.tui.wanted import Wanted

if TYPE_CHECKING:
    from chamberwise.exports.audit.report import Report

NOT_AUDITED = N_("A draft of many pages is printed unaudited; --report audits it.")
ENGLISH_APPROVED = N_(
    "Approved is the English text; in this language it is printed as a draft, errors and all."
)


class StoppedOrderError(Exception):
    """It must not go out so; `args[0]` says why, with each way out. `reports` if audited."""

    def __init__(self, why: str, reports: tuple[Report, ...] = ()) -> None:
        super().__init__(why)
        self.reports = reports


class Done(NamedTuple):
    """What was written, which sheets they are, what the person who asked should know, audits."""

    files: tuple[Path, ...]
    orders: tuple[tuple[Kind, Order], ...]
    told: tuple[str, ...]
    reports: tuple[Report, ...]


def print_sheets(
    library: Library, wanted: Wanted, prepare: Callable[[Library, Wanted], Prepared] = prepared
) -> Done:
    """Write the sheets, or nothing. Raises `UnusableOrderError` or `StoppedOrderError`."""
    try:
        found = prepare(library, wanted)
        audit_lines = _judged(found.reports, library, wanted)
        documents = found.documents
        files = {path: content for each in documents for path, content in _files(each, wanted)}
        for path in () if wanted.overwrite else files:
            refuse_strangers(path)
        write(files)
    except UnfitSheetsError as error:
        raise StoppedOrderError("\n\n".join(_unfit(error))) from error
    except (NotMadeError, NotWrittenError, UnprintableError) as error:
        raise UnusableOrderError(str(error)) from error
    lines = (*found.told, *audit_lines, *_standing(library, wanted))
    return Done(tuple(files), found.orders, lines, found.reports)


def text_of(library: Library, wanted: Wanted) -> str:
    """Return the text form of the sheets. Raises `UnusableOrderError`."""
    try:
        return told_as_text(orders_of(library, wanted))
    except NotMadeError as error:
        raise UnusableOrderError(str(error)) from error


def write_text(text: str, wanted: Wanted) -> Path:
    """Write the text form where it was asked to go. Raises `UnusableOrderError`."""
    try:
        name = f"{wanted.pathway}-{wanted.what}"
        path = destination(wanted.out, name, Form.TEXT, is_folder=wanted.is_folder)
        if not wanted.overwrite:
            refuse_strangers(path)
        write({path: text.encode(errors="replace")})
    except NotWrittenError as error:
        raise UnusableOrderError(str(error)) from error
    return path


def register(library: Library, done: Done, path: Path, hangs: str = "", source: str = "") -> None:
    """Keep in the register what was printed, `source` outside the library. `RegisterError`."""
    copies = [copy_of(kind, order, hangs, source) for kind, order in done.orders]
    pathway = done.orders[0][1].pathway
    register_file.add(path, copies, snapshot(library, pathway))


def _judged(reports: tuple[Report, ...], library: Library, wanted: Wanted) -> tuple[str, ...]:
    """Return what to say of the audit, or raise `StoppedOrderError`: somebody stands for it."""
    from chamberwise.exports.printing.telling_audits import told, told_of_draft, told_of_waivers

    pathway, waived = library.pathways[wanted.pathway], told_of_waivers(reports, wanted.waivers)
    if not pathway.is_approved:
        unaudited = () if reports else (_(NOT_AUDITED),)
        errors = tuple(told_of_draft(reports))
        is_fallen = errors and library.translation and pathway.approved_by
        return (*waived, *errors, *((_(ENGLISH_APPROVED),) if is_fallen else ()), *unaudited)
    found = [line for each in reports for line in told(each)]
    if found:
        raise StoppedOrderError("\n".join(found), reports)
    return tuple(waived)


def _files(made: Document, wanted: Wanted) -> Iterable[tuple[Path, bytes]]:
    path = destination(wanted.out, made.name, wanted.form, is_folder=wanted.is_folder)
    is_pdf = wanted.form is Form.PDF
    contents = [made.pdf] if is_pdf else printed(made.sheet, wanted.form)
    return zip(paged(path, len(contents)), contents, strict=True)


def _unfit(error: UnfitSheetsError) -> Iterator[str]:
    for kind, each in error.found:
        ways = [f"  - {way}" for way in each.ways_out]
        yield "\n".join(
            [
                _("The {kind} cannot be read so: {why}").format(kind=_(kind.words), why=each.why),
                _("Ways out:"),
                *ways,
            ]
        )


def _standing(library: Library, wanted: Wanted) -> Iterator[str]:
    status = library.pathways[wanted.pathway].status
    if status in (Standing.SUPERSEDED, Standing.WITHDRAWN):
        yield _("The pathway itself is marked {status}: do not hang this up.").format(
            status=status_word(status)
        )
