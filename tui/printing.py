"""Printing as asked for: from kinds and papers to files on disk and lines in the register."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import NamedTuple

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.pathway import Status as Standing
from chamberwise.engine.store import register_file
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.files import (
    NotWrittenError,
    destination,
    paged,
    refuse_strangers,
    write,
)
from chamberwise.exports.printing.kinds import NotMadeError, usual
from chamberwise.exports.printing.letters import faults
from chamberwise.exports.printing.order import Kind, Order
from chamberwise.exports.printing.printing import (
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
from chamberwise.exports.typesetting.compiling import UnprintableError

PACK = "pack"


class UnusableOrderError(Exception):
    """It cannot be printed so; `args[0]` says why and what to do."""


class StoppedOrderError(Exception):
    """It must not go out so; `args[0]` says why, with each way out."""


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

    @property
    def is_pack(self) -> bool:
        """Whether every kind is wanted."""
        return self.what == PACK

    def sized(self, kind: Kind) -> Sized:
        """Return the paper of a kind; in a pack, what was asked is meant of the wall chart."""
        usually = usual(kind)
        if self.is_pack and kind is not Kind.WALL_CHART:
            return usually
        return Sized(self.paper or usually.paper, self.turn or usually.turn)


class Done(NamedTuple):
    """What was written, which sheets they are, and what the person who asked should know."""

    files: tuple[Path, ...]
    orders: tuple[tuple[Kind, Order], ...]
    told: tuple[str, ...]


def print_sheets(library: Library, wanted: Wanted) -> Done:
    """Write the sheets, or nothing. Raises `UnusableOrderError` or `StoppedOrderError`."""
    try:
        orders = _orders(library, wanted)
        laid = laid_out(orders)
        _refuse_faulty(laid, library.pathways[wanted.pathway])
        laid = tuple(_tiled(each, wanted) for each in laid)
        files = dict(_files(laid, wanted))
        for path in () if wanted.overwrite else files:
            refuse_strangers(path)
        write(files)
    except UnfitSheetsError as error:
        raise StoppedOrderError("\n\n".join(_unfit(error))) from error
    except (NotMadeError, NotWrittenError, UnprintableError) as error:
        raise UnusableOrderError(str(error)) from error
    told = dict.fromkeys(line for each in laid for line in each.told)
    return Done(tuple(files), orders, (*told, *_standing(library, wanted)))


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
    if library.pathways[wanted.pathway].cases is None:
        if not wanted.is_pack and Kind.CASE_TABLE in kinds:
            raise UnusableOrderError(
                f"`{wanted.pathway}` has no table of cases. Add `cases:` to its file."
            )
        kinds = [each for each in kinds if each is not Kind.CASE_TABLE]
    job = Job(library, wanted.pathway, wanted.made, wanted.distance, wanted.unit)
    return ordered(job, ((kind, wanted.sized(kind)) for kind in kinds))


def _refuse_faulty(laid: Iterable[Laid], pathway: Pathway) -> None:
    """Raise `StoppedOrderError` where the audit finds errors in a sheet somebody stands for."""
    if not pathway.is_approved:
        return
    from chamberwise.exports.printing.auditing import report_of, told

    found = [line for each in laid for line in told(report_of(each))]
    if found:
        raise StoppedOrderError("\n".join(found))


def _tiled(laid: Laid, wanted: Wanted) -> Laid:
    if not wanted.is_tiled or laid.kind is not Kind.WALL_CHART:
        return laid
    from chamberwise.exports.tiling.tiling import tiled

    order = laid.order
    several = len(laid.pages) > 1
    pages = [
        tiled(page, order.control, order.ruler, f", page {number}" if several else "")
        for number, page in enumerate(laid.pages, start=1)
    ]
    return replace(laid, pages=tuple(page for each in pages for page in each.pages))


def _files(laid: tuple[Laid, ...], wanted: Wanted) -> Iterator[tuple[Path, bytes]]:
    """Yield each file; a pack of drawings or pictures has files for each kind."""
    if not wanted.is_pack or wanted.form is Form.PDF:
        yield from _document(laid, wanted, wanted.what)
    else:
        for each in laid:
            yield from _document((each,), wanted, each.kind.value)


def _document(laid: tuple[Laid, ...], wanted: Wanted, what: str) -> Iterable[tuple[Path, bytes]]:
    sheet = sheet_of(laid)
    lacking = faults(sheet)
    if lacking:
        raise UnprintableError("\n".join(["This cannot be printed:", *map(str, lacking)]))
    name = f"{wanted.pathway}-{what}-{laid[0].order.sized.paper}"
    name += "-tiles" if wanted.is_tiled else ""
    path = destination(wanted.out, name, wanted.form, is_folder=wanted.is_folder)
    contents = printed(sheet, wanted.form)
    return zip(paged(path, len(contents)), contents, strict=True)


def _unfit(error: UnfitSheetsError) -> Iterator[str]:
    for kind, each in error.found:
        ways = [f"  - {way}" for way in each.ways_out]
        yield "\n".join([f"The {kind.words} cannot be read so: {each.why}", "Ways out:", *ways])


def _standing(library: Library, wanted: Wanted) -> Iterator[str]:
    status = library.pathways[wanted.pathway].status
    if status in (Standing.SUPERSEDED, Standing.WITHDRAWN):
        yield f"The pathway itself is marked {status}: do not hang this up."
