"""Backup lenses of the shelf for one eye, by position, each by its own constant."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal

from chamberwise.engine.brief.brief import Backup, OnTheShelf, Position
from chamberwise.engine.brief.case import Stock, StockedLens
from chamberwise.engine.brief.form import IN_FRONT, SULCUS
from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import as_typed, plain, pointed, shown
from chamberwise.engine.working.optics.stocked import around
from chamberwise.engine.working.optics.sulcus import BANDS, changes
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.registry import calculation
from chamberwise.engine.working.run import worked
from chamberwise.engine.working.working import Working

EYE = ("axial-length", "keratometry", "target", "eye", "biometry-eye")
HALF, MORE = "0.5", "0.75"
Left = Callable[[str, Decimal], str]
"""What a lens, the step below or above and its power, would leave."""


def backups(written: Mapping[str, str], stock: Stock) -> Iterator[Backup]:
    """Yield each lens of the shelf in each position it is made for."""
    eye = {name: written[name] for name in EYE if name in written}
    for lens in stock.lenses:
        if lens.kind in SULCUS:
            yield from _behind_the_iris(lens, eye, stock)
        if lens.kind in IN_FRONT:
            yield from _held_by_the_iris(lens, eye)


def _behind_the_iris(lens: StockedLens, eye: Mapping[str, str], stock: Stock) -> Iterator[Backup]:
    """Yield the lens captured, if it is made for that, and in the sulcus."""
    captures = lens.kind == "three-piece"
    positions = (Position.CAPTURED, Position.SULCUS) if captures else (Position.SULCUS,)
    try:
        bag = _in_bag(lens, eye)
        sulcus = _in_sulcus(lens, eye, bag.result("power"), stock.sulcus)
    except RefusedError as error:
        yield from (_refused(each, lens, error) for each in positions)
        return
    if captures:
        yield _captured(lens, bag)
    yield sulcus


def _held_by_the_iris(lens: StockedLens, eye: Mapping[str, str]) -> Iterator[Backup]:
    try:
        yield _in_front(lens, eye)
    except RefusedError as error:
        yield _refused(Position.IN_FRONT, lens, error)


def _refused(position: Position, lens: StockedLens, error: RefusedError) -> Backup:
    why = "; ".join(each.what for each in error.refusals)
    return Backup(position, lens.name, lens.title, None, "", (), refused=why)


def _captured(lens: StockedLens, bag: Working) -> Backup:
    exact = bag.result("power")
    shelf = _shelf(lens, exact, lambda which, _power: _left(bag, f"{which}-leaves"))
    way = _("SRK/T, A {a_constant}, not reduced").format(a_constant=plain(lens.a_constant))
    return Backup(Position.CAPTURED, lens.name, lens.title, exact, way, tuple(shelf))


def _in_bag(lens: StockedLens, eye: Mapping[str, str]) -> Working:
    return _worked("srk-t", {**eye, "a-constant": as_typed(lens.a_constant)}, lens)


def _in_sulcus(lens: StockedLens, eye: Mapping[str, str], planned: Decimal, choice: str) -> Backup:
    typed = {name: text for name, text in eye.items() if name != "axial-length"} | {
        "planned-lens": as_typed(planned),
        "lens-type": lens.kind,
    }
    found = _worked("lens-to-sulcus", typed, lens)
    half, more = (found.result(f"vergence-{shift}") for shift in (HALF, MORE))
    exact, way = _chosen(choice, planned, half, more)
    shelf = _shelf(
        lens, exact, lambda _side, power: _left(found, f"{pointed(power)}-leaves-{HALF}")
    )
    others = [(HALF, half), (MORE, more)]
    beside = ", ".join(
        f"{decimal(mm)} mm {shown(each, 2)} D" for mm, each in others if each != exact
    )
    return Backup(Position.SULCUS, lens.name, lens.title, exact, way, tuple(shelf), beside)


def _chosen(choice: str, planned: Decimal, half: Decimal, more: Decimal) -> tuple[Decimal, str]:
    """Return the power by the unit's way; where that gives no one figure, by half a millimetre."""
    if choice == f"vergence-{MORE}":
        return more, _("the unit's way: {shift} mm forward").format(shift=decimal(MORE))
    for table in BANDS:
        if table.name == choice:
            found = changes(table, planned)
            if len(found) == 1 and len(found[0].change) == 1:
                return planned + found[0].change[0], _("the unit's way: {table}").format(
                    table=_(table.title)
                )
            return half, _("the unit's way ({table}) gives no single figure here").format(
                table=_(table.title)
            )
    way = _("the unit's way: {shift} mm forward")
    unset = _("unit's way NOT SET: {shift} mm forward")
    return half, (way if choice else unset).format(shift=decimal(HALF))


def _in_front(lens: StockedLens, eye: Mapping[str, str]) -> Backup:
    typed = {**eye, "a-constant": as_typed(lens.a_constant), "fixation": lens.kind}
    exact = _worked("anterior-chamber-lens", typed, None).result("power")
    shelf = _shelf(lens, exact, lambda *_which: "")
    way = f"SRK/T, A {plain(lens.a_constant)}"
    return Backup(Position.IN_FRONT, lens.name, lens.title, exact, way, tuple(shelf))


def _worked(name: str, typed: Mapping[str, str], lens: StockedLens | None) -> Working:
    stock = {"stock": " ".join(map(as_typed, lens.powers))} if lens and lens.powers else {}
    return worked(calculation(name), {**typed, **stock}, keeps_lines=False)


def _shelf(lens: StockedLens, exact: Decimal, left: Left) -> Iterator[OnTheShelf]:
    if not lens.powers:
        return
    for which, power in zip(("below", "above"), around(exact, lens.powers), strict=True):
        if power is not None:
            yield OnTheShelf(power, lens.counts[power], left(which, power))


def _left(found: Working, name: str) -> str:
    return next((each.shown for each in found.results if each.name == name), "")
