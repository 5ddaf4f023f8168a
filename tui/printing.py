"""Printing as asked for: from kinds and papers to files on disk and lines in the register."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Status as Standing
from chamberwise.engine.store import register_file
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.files import (
    NotWrittenError,
    destination,
    paged,
    refuse_strangers,
    write,
)
from chamberwise.exports.printing.kinds import ON_A4, NotMadeError, usual
from chamberwise.exports.printing.letters import refuse_letters
from chamberwise.exports.printing.order import Kind, Order
from chamberwise.exports.printing.printing import (
    Cut,
    Form,
    Job,
    Laid,
    UnfitSheetsError,
    laid_out,
    ordered,
    printed,
    sheet_of,
    told_as_text,
)
from chamberwise.exports.printing.registering import copy_of
from chamberwise.exports.stamp.snapshot import snapshot
from chamberwise.exports.typesetting.compiling import UnprintableError, to_pdf
from chamberwise.tui.present.words import status_word

if TYPE_CHECKING:
    from chamberwise.exports.audit.report import Report
    from chamberwise.exports.audit.terms import Waiver

PACK = "pack"
NOT_AUDITED = N_("A draft of many pages is printed unaudited; --report audits it.")
ENGLISH_APPROVED = N_(
    "Approved is the English text; in this language it is printed as a draft, errors and all."
)
FEW = 12
"""Pages; the audit of more takes longer than the printing, and a draft does without."""


class UnusableOrderError(Exception):
    """It cannot be printed so; `args[0]` says why and what to do."""


class StoppedOrderError(Exception):
    """It must not go out so; `args[0]` says why, with each way out. `reports` if audited."""

    def __init__(self, why: str, reports: tuple[Report, ...] = ()) -> None:
        super().__init__(why)
        self.reports = reports


@dataclass(frozen=True, slots=True)
class Wanted:
    """What was asked for. `what` is a kind of sheet or the pack of all."""

    pathway: str
    what: str
    made: date
    form: Form = Form.PDF
    paper: Paper | None = None
    turn: Turn | None = None
    distance: float | None = None
    unit: str | None = None
    is_tiled: bool = False
    out: Path | None = None
    is_folder: bool = False
    overwrite: bool = False
    waivers: tuple[Waiver, ...] = ()
    is_reported: bool = False
    """Whether the audit is wanted of a long draft too; all else always has it."""

    @property
    def is_pack(self) -> bool:
        """Whether every kind is wanted."""
        return self.what == PACK

    def sized(self, kind: Kind) -> Sized:
        """Return the paper of a kind; in a pack, what was asked is meant of the wall chart."""
        usually = usual(kind)
        if kind in ON_A4 or (self.is_pack and kind is not Kind.WALL_CHART):
            return usually
        return Sized(self.paper or usually.paper, self.turn or usually.turn)


class Done(NamedTuple):
    """What was written, which sheets they are, what the person who asked should know, audits."""

    files: tuple[Path, ...]
    orders: tuple[tuple[Kind, Order], ...]
    told: tuple[str, ...]
    reports: tuple[Report, ...]


def print_sheets(library: Library, wanted: Wanted) -> Done:
    """Write the sheets, or nothing. Raises `UnusableOrderError` or `StoppedOrderError`."""
    try:
        orders = _orders(library, wanted)
        laid = tuple(_tiled(each, wanted) for each in laid_out(orders))
        is_approved = library.pathways[wanted.pathway].is_approved
        must = is_approved or wanted.is_reported or bool(wanted.waivers)
        made = tuple(_made(each, wanted, must_audit=must) for each in _apart(laid, wanted))
        reports = tuple(report for each in made for report in each.reports)
        audit_lines = _judged(reports, library, wanted)
        files = {path: content for each in made for path, content in _document(each, wanted)}
        for path in () if wanted.overwrite else files:
            refuse_strangers(path)
        write(files)
    except UnfitSheetsError as error:
        raise StoppedOrderError("\n\n".join(_unfit(error))) from error
    except (NotMadeError, NotWrittenError, UnprintableError) as error:
        raise UnusableOrderError(str(error)) from error
    told = dict.fromkeys(line for each in laid for line in each.told)
    lines = (*told, *audit_lines, *_standing(library, wanted))
    return Done(tuple(files), orders, lines, reports)


def text_of(library: Library, wanted: Wanted) -> str:
    """Return the text form of the sheets. Raises `UnusableOrderError`."""
    try:
        return told_as_text(_orders(library, wanted))
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


def _orders(library: Library, wanted: Wanted) -> tuple[tuple[Kind, Order], ...]:
    kinds = [*Kind] if wanted.is_pack else [Kind(wanted.what)]
    if kinds[0] in ON_A4 and wanted.paper not in (None, Paper.A4):
        raise UnusableOrderError(
            _("`{kind}` is made from A4. Leave out `--paper {paper}`.").format(
                kind=kinds[0], paper=wanted.paper
            )
        )
    if library.pathways[wanted.pathway].cases is None:
        if not wanted.is_pack and Kind.CASE_TABLE in kinds:
            raise UnusableOrderError(
                _("`{pathway}` has no table of cases. Add `cases:` to its file.").format(
                    pathway=wanted.pathway
                )
            )
        kinds = [each for each in kinds if each is not Kind.CASE_TABLE]
    job = Job(library, wanted.pathway, wanted.made, wanted.distance, wanted.unit)
    return ordered(job, ((kind, wanted.sized(kind)) for kind in kinds))


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


def _tiled(laid: Laid, wanted: Wanted) -> Laid:
    if not wanted.is_tiled or laid.kind is not Kind.WALL_CHART:
        return laid
    from chamberwise.exports.tiling.tiling import tiled

    order = laid.order
    several = len(laid.pages) > 1
    pages = [
        tiled(
            page,
            order.control,
            order.ruler,
            _(", page {number}").format(number=number) if several else "",
        )
        for number, page in enumerate(laid.pages, start=1)
    ]
    cuts = [Cut(len(each.grid.rows), len(each.grid.columns), each.grid.overlap) for each in pages]
    return replace(
        laid,
        pages=tuple(page for each in pages for page in each.pages),
        uncut=laid,
        cuts=tuple(cuts),
    )


class _Made(NamedTuple):
    """One document with its audits, if it was audited, and what its files are named after."""

    sheet: Sheet
    pdf: bytes
    reports: tuple[Report, ...]
    name: str


def _apart(laid: tuple[Laid, ...], wanted: Wanted) -> list[tuple[Laid, ...]]:
    """Return the documents to make; a pack of drawings or pictures has one for each kind."""
    is_whole = not wanted.is_pack or wanted.form is Form.PDF
    return [laid] if is_whole else [(each,) for each in laid]


def _made(laid: tuple[Laid, ...], wanted: Wanted, *, must_audit: bool) -> _Made:
    sheet = sheet_of(laid)
    refuse_letters(sheet)
    what = wanted.what if wanted.form is Form.PDF or not wanted.is_pack else laid[0].kind.value
    name = f"{wanted.pathway}-{what}-{laid[0].order.sized.paper}"
    name += "-tiles" if wanted.is_tiled else ""
    if not must_audit and len(sheet.pages) > FEW:
        return _Made(sheet, to_pdf(sheet), (), name)
    from chamberwise.exports.printing.auditing import audited

    return _Made(sheet, *audited(laid, wanted.waivers), name)


def _document(made: _Made, wanted: Wanted) -> Iterable[tuple[Path, bytes]]:
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
