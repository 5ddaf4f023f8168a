"""From what somebody wants printed to sheets, and from sheets to bytes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from typing import NamedTuple

from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.stamp.code import stamp_of
from chamberwise.engine.stamp.content import content_digest
from chamberwise.exports.control.content import Control
from chamberwise.exports.control.extract import control_of
from chamberwise.exports.control.lines import (
    exceptions,
    identified,
    rule_of_use,
    translated,
    until,
)
from chamberwise.exports.paper.sheet import Page, Run, Sheet
from chamberwise.exports.paper.sizes import Sized
from chamberwise.exports.printing.kinds import maker, teller
from chamberwise.exports.printing.marking import marked_png, marked_svg, marked_text, subject
from chamberwise.exports.printing.order import Kind, Made, Order, UnfitError
from chamberwise.exports.printing.sheet_name import sheet_name
from chamberwise.exports.stamp.modules import modules
from chamberwise.exports.typesetting.forgetting import forget
from chamberwise.exports.typesetting.measuring import Ruler

PLAIN = str.maketrans({"\u00a0": " ", "\u2011": "-"})
"""Signs that keep a line of print together, as they are typed."""


class Form(StrEnum):
    """What a sheet is written as."""

    PDF = "pdf"
    SVG = "svg"
    PNG = "png"
    TEXT = "text"

    @property
    def ending(self) -> str:
        """The ending of its files."""
        return ".txt" if self is Form.TEXT else f".{self.value}"


@dataclass(frozen=True, slots=True)
class Job:
    """A pathway to print. `made` dates the files; `distance` in metres is to be read from."""

    library: Library
    pathway: PathwayId
    made: date
    distance: float | None = None
    unit: str | None = None
    ruler: Ruler = field(default_factory=Ruler, compare=False)


class Cut(NamedTuple):
    """How a page was cut into tiles, the overlap in millimetres; one page more shows the whole."""

    rows: int
    columns: int
    overlap: float

    @property
    def pages(self) -> int:
        """How many pages the tiles and the page that shows them take."""
        return self.rows * self.columns + 1


@dataclass(frozen=True, slots=True)
class Laid:
    """One kind of sheet, laid out; where it was cut, as it was before, and how each page was."""

    kind: Kind
    order: Order
    pages: tuple[Page, ...]
    told: tuple[str, ...] = ()
    uncut: Laid | None = None
    cuts: tuple[Cut, ...] = ()


class UnfitSheetsError(Exception):
    """Some sheets cannot be read on their paper: each kind, and why."""

    def __init__(self, found: tuple[tuple[Kind, UnfitError], ...]) -> None:
        super().__init__(", ".join(kind.words for kind, _error in found))
        self.found = found

    def __reduce__(self) -> tuple[type[UnfitSheetsError], tuple[object, ...]]:
        """Tell how it is made again, in another process."""
        return type(self), (self.found,)


def ordered(job: Job, kinds: Iterable[tuple[Kind, Sized]]) -> tuple[tuple[Kind, Order], ...]:
    """Return an order for each kind, with its stamp."""
    pathway = job.library.pathways[job.pathway]
    content = content_digest(job.library, job.pathway)
    orders = []
    for kind, sized in kinds:
        code = stamp_of(content, sheet_name(kind))
        control = control_of(
            pathway, kind.words, job.made, code, modules(code), job.unit, job.library
        )
        order = Order(job.library, job.pathway, sized, control, job.made, job.distance, job.ruler)
        orders.append((kind, order))
    return tuple(orders)


def made(kind: Kind, order: Order) -> Made:
    """Return the pages of one kind. Raises `UnfitError`, `NotMadeError`."""
    return maker(kind)(order)


def laid_out(
    orders: Iterable[tuple[Kind, Order]], make: Callable[[Kind, Order], Made] | None = None
) -> tuple[Laid, ...]:
    """Return each kind laid out, by `make` if it was given.

    Raises `UnfitSheetsError` once all were tried, `NotMadeError`.
    """
    several = tuple(orders)
    laid, unfit = [], []
    for kind, order in several:
        try:
            found = make(kind, order) if make else made(kind, order)
        except UnfitError as error:
            unfit.append((kind, error))
        else:
            laid.append(Laid(kind, order, found.pages, found.told))
        if len(several) > 1 and not make:
            forget()
    if unfit:
        raise UnfitSheetsError(tuple(unfit))
    return tuple(laid)


def sheet_of(laid: Iterable[Laid]) -> Sheet:
    """Return what was laid out as one document; each kind counts its own pages."""
    several = tuple(laid)
    order = several[0].order
    kinds = several[0].kind.words if len(several) == 1 else _("all sheets")
    title = f"{order.control.title}: {kinds}"
    told = subject((each.kind.words, each.order.control.code) for each in several)
    pages = tuple(page for each in several for page in each.pages)
    return Sheet(title, f"{order.pathway}. {told}", spoken().code, order.made, pages)


def printed(sheet: Sheet, form: Form) -> list[bytes]:
    """Return one PDF, or a drawing or picture for each page. Raises `UnprintableError`."""
    from chamberwise.exports.typesetting.compiling import to_pdf, to_png, to_svg

    if form is Form.SVG:
        return [marked_svg(each, sheet.title, sheet.subject) for each in to_svg(sheet)]
    if form is Form.PNG:
        return [marked_png(each, sheet.title, sheet.subject) for each in to_png(sheet)]
    return [to_pdf(sheet)]


def _controlled(text: str, control: Control) -> str:
    """Return a text between its marks and what the foot of a page says."""
    foreign = translated(control)
    use = "".join(run.text for run in (*rule_of_use(), *exceptions(control)))
    use += "".join(run.text for run in (Run("\n"), *foreign)) if foreign else ""
    about = (each.translate(PLAIN) for each in (*identified(control), until(control)))
    asked = _("Stamp {code}. Is it current? {command}").format(
        code=control.code, command=f"chamberwise stamp {control.code}"
    )
    return "\n".join((*control.marks, text.rstrip("\n"), "", use, *about, asked))


def told_as_text(orders: Iterable[tuple[Kind, Order]]) -> str:
    """Return the text form of every kind. Raises `NotMadeError`."""
    several = tuple(orders)
    texts = (_controlled(teller(kind)(order), order.control) for kind, order in several)
    told = subject((kind.words, order.control.code) for kind, order in several)
    return marked_text("\n\n\n".join(texts), told)
