"""The audit of what is to go out, on the very file: an approved sheet with an error does not."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple, Protocol, TypeAlias

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.printed.read import Reader
from chamberwise.exports.audit.report import Report
from chamberwise.exports.audit.rules.printing import OF_A_TILE
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.audit.terms import Terms, Tiling, Waiver
from chamberwise.exports.paper.sheet import Page, Sheet
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.printing import Cut, Laid, sheet_of
from chamberwise.exports.typesetting.compiling import to_pdf


class Audited(NamedTuple):
    """A finished PDF and a report for each kind of sheet in it; of one cut into tiles, two."""

    pdf: bytes
    reports: tuple[Report, ...]


class Part(NamedTuple):
    """Pages of a finished PDF that are audited together; `first` is the first, from nought."""

    sheet: Sheet
    pdf: bytes
    terms: Terms
    first: int = 0
    tiles: str = ""
    """Which page was cut into them, where they are tiles; `all` where there is one."""


ONE = "all"


class Judge(Protocol):
    """Audits a part; `reader` sets the second reader to work elsewhere."""

    def __call__(self, part: Part, reader: Reader | None = None, /) -> Report:
        """Return the report."""


Each: TypeAlias = Callable[[Judge, Iterable[Part]], Iterable[Report]]
"""Applies the audit to each part, as `map` does."""


def audited(laid: Sequence[Laid], waivers: tuple[Waiver, ...] = (), each: Each = map) -> Audited:
    """Make one file of some kinds and audit each. Raises `UnprintableError`."""
    sheet = sheet_of(laid)
    pdf = to_pdf(sheet)
    return Audited(pdf, tuple(each(judged, _parts(sheet, laid, pdf, waivers))))


def judged(part: Part, reader: Reader | None = None) -> Report:
    """Return the audit of a part. Content is judged whole: a tile shows what it shows.

    `reader` sets the second reader to work elsewhere.
    """
    sheet, pdf, terms, first, tiles = part
    rules = OF_A_TILE if tiles else RULES
    report = audit(sheet, pdf, terms, first=first, rules=rules, reader=reader)
    if not tiles:
        return report
    which = f" {tiles}" if tiles != ONE else ""
    told = _("{sheet}{which}, cut into tiles").format(sheet=report.sheet, which=which)
    return replace(report, sheet=told)


def _parts(
    sheet: Sheet, laid: Sequence[Laid], pdf: bytes, waivers: tuple[Waiver, ...]
) -> Iterator[Part]:
    start = 0
    for each in laid:
        if each.uncut:
            whole = sheet_of((each.uncut,))
            yield from _parts(whole, (each.uncut,), to_pdf(whole), waivers)
            yield from _of_tiles(sheet, each, pdf, waivers, start)
        else:
            yield Part(_part(sheet, each.pages), pdf, _terms(each, waivers), start)
        start += len(each.pages)


def _of_tiles(
    sheet: Sheet, laid: Laid, pdf: bytes, waivers: tuple[Waiver, ...], start: int
) -> Iterator[Part]:
    """Yield the tiles of each page that was cut."""
    place = 0
    for number, cut in enumerate(laid.cuts, start=1):
        pages = laid.pages[place : place + cut.pages]
        terms = replace(_terms(laid, waivers), sized=_sized(pages), tiling=_tiling(cut))
        which = str(number) if len(laid.cuts) > 1 else ONE
        yield Part(_part(sheet, pages), pdf, terms, start + place, which)
        place += cut.pages


def _part(sheet: Sheet, pages: tuple[Page, ...]) -> Sheet:
    return replace(sheet, pages=pages)


def _sized(pages: tuple[Page, ...]) -> Sized:
    width, height = pages[-1].format
    return Sized(Paper.A4, Turn.PORTRAIT if width < height else Turn.LANDSCAPE)


def _tiling(cut: Cut) -> Tiling:
    return Tiling(cut.rows, cut.columns, cut.overlap)


def _terms(laid: Laid, waivers: tuple[Waiver, ...]) -> Terms:
    order = laid.order
    return Terms(laid.kind, order.sized, order.control, order.distance, waivers=waivers)


def is_rule(name: str) -> bool:
    """Return whether the audit has a rule of this name."""
    return any(each.id == name for each in RULES)
