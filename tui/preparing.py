"""All of printing that needs no look at the disk: sheets laid out, made and audited."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.exports.paper.sheet import Sheet
from chamberwise.exports.paper.sizes import Paper
from chamberwise.exports.printing.kinds import ON_A4
from chamberwise.exports.printing.letters import refuse_letters
from chamberwise.exports.printing.order import Kind, Made, Order
from chamberwise.exports.printing.printing import (
    Cut,
    Form,
    Job,
    Laid,
    laid_out,
    ordered,
    sheet_of,
)
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.tui.wanted import UnusableOrderError, Wanted

if TYPE_CHECKING:
    from chamberwise.exports.audit.report import Report
    from chamberwise.exports.printing.auditing import Each

FEW = 12
"""Pages; the audit of more takes longer than the printing, and a draft does without."""


class Prepared(NamedTuple):
    """What is to be written, of which sheets, and what whoever asked should know of them."""

    orders: tuple[tuple[Kind, Order], ...]
    told: tuple[str, ...]
    documents: tuple[Document, ...]

    @property
    def reports(self) -> tuple[Report, ...]:
        """The audits, in the order of the sheets."""
        return tuple(report for each in self.documents for report in each.reports)


class Document(NamedTuple):
    """One document with its audits, if it was audited, and what its files are named after."""

    sheet: Sheet
    pdf: bytes
    reports: tuple[Report, ...]
    name: str


def prepared(
    library: Library,
    wanted: Wanted,
    make: Callable[[Kind, Order], Made] | None = None,
    each: Each = map,
) -> Prepared:
    """Return the sheets, made by `make` and audited by `each` where these are given.

    Raises `UnusableOrderError`, `UnfitSheetsError`, `NotMadeError` or `UnprintableError`.
    """
    orders = orders_of(library, wanted)
    laid = tuple(_tiled(one, wanted) for one in laid_out(orders, make))
    is_approved = library.pathways[wanted.pathway].is_approved
    must = is_approved or wanted.is_reported or bool(wanted.waivers)
    documents = (_made(one, wanted, each, must_audit=must) for one in _apart(laid, wanted))
    told = dict.fromkeys(line for one in laid for line in one.told)
    return Prepared(orders, tuple(told), tuple(documents))


def orders_of(library: Library, wanted: Wanted) -> tuple[tuple[Kind, Order], ...]:
    """Return an order for each kind there is a sheet of. Raises `UnusableOrderError`."""
    kinds = wanted.kinds
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
        kinds = tuple(each for each in kinds if each is not Kind.CASE_TABLE)
    job = Job(library, wanted.pathway, wanted.made, wanted.distance, wanted.unit)
    return ordered(job, ((kind, wanted.sized(kind)) for kind in kinds))


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


def _apart(laid: tuple[Laid, ...], wanted: Wanted) -> list[tuple[Laid, ...]]:
    """Return the documents to make; a pack of drawings or pictures has one for each kind."""
    is_whole = not wanted.is_pack or wanted.form is Form.PDF
    return [laid] if is_whole else [(each,) for each in laid]


def _made(laid: tuple[Laid, ...], wanted: Wanted, each: Each, *, must_audit: bool) -> Document:
    sheet = sheet_of(laid)
    refuse_letters(sheet)
    what = wanted.what if wanted.form is Form.PDF or not wanted.is_pack else laid[0].kind.value
    name = f"{wanted.pathway}-{what}-{laid[0].order.sized.paper}"
    name += "-tiles" if wanted.is_tiled else ""
    if not must_audit and len(sheet.pages) > FEW:
        return Document(sheet, to_pdf(sheet), (), name)
    from chamberwise.exports.printing.auditing import audited

    return Document(sheet, *audited(laid, wanted.waivers, each), name)
