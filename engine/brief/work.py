"""From a list and a shelf to the brief."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal

from chamberwise.engine.brief.backups import backups
from chamberwise.engine.brief.brief import Backup, Brief, CaseBrief, Risk
from chamberwise.engine.brief.case import Case, CaseList, Head, Stock
from chamberwise.engine.brief.fields import OF_RISK
from chamberwise.engine.brief.ready import ready
from chamberwise.engine.brief.to_do import of_the_list, of_the_shelf
from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.calculations.rupture_risk import OPEN
from chamberwise.engine.working.digits import as_typed, plain
from chamberwise.engine.working.optics.inputs import TARGET
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.registry import calculation
from chamberwise.engine.working.run import worked
from chamberwise.engine.working.scalars import number

APART = Decimal("0.5")
"""Dioptres by which plan and biometry may differ before it is asked about."""


def brief(listed: CaseList, stock: Stock) -> Brief:
    """Return the brief of a list, with everything to be done before it starts."""
    head = _head(listed.head, stock.head)
    cases = tuple(_case(each, stock) for each in listed.cases)
    chance = _chance(cases)
    to_do = (*of_the_list(head, stock), *of_the_shelf(listed.cases, cases, stock))
    return Brief(head, stock.unit, stock.counted, cases, chance, tuple(to_do))


def _head(of_list: Head, of_unit: Head) -> Head:
    return Head(
        of_list.title,
        of_list.day,
        of_list.reader or of_unit.reader,
        of_list.takes_over or of_unit.takes_over,
        of_list.stop_word or of_unit.stop_word,
    )


def _case(case: Case, stock: Stock) -> CaseBrief:
    written = case.written
    to_do: list[str] = []
    risk = _risk(written, to_do)
    planned = _planned(written, stock, to_do)
    found = tuple(backups(written, stock))
    to_do += [each for each in dict.fromkeys(_without_figure(found)) if not _said(each, to_do)]
    return CaseBrief(
        label=case.label,
        eye=written.get("eye", ""),
        anaesthesia=written.get("anaesthesia", ""),
        risk=risk,
        ready=ready(written),
        planned=planned,
        backups=found,
        ceiling=_ceiling(written, stock, to_do),
        to_do=tuple(to_do),
    )


def _risk(written: Mapping[str, str], to_do: list[str]) -> Risk | None:
    names = (*OF_RISK, "axial-length")
    typed = {name: written[name] for name in names if name in written}
    try:
        found = worked(calculation("rupture-risk"), typed, keeps_lines=False)
    except RefusedError as error:
        to_do += [_("Risk: {what}.").format(what=each.what) for each in error.refusals]
        return None
    points = tuple(": ".join(row[:2]) for row in found.tables[1].rows[1:])
    before, after = _(OPEN).split("{unknown}")
    told = next((each for each in found.remarks if each.startswith(before)), "")
    if told:
        open_ones = told.removeprefix(before).removesuffix(after)
        to_do.append(_("Open of the risk: {names}.").format(names=open_ones))
    return Risk(found.result("low"), found.result("high"), points, told)


def _planned(written: Mapping[str, str], stock: Stock, to_do: list[str]) -> str:
    """Return the planned lens and what it leaves by SRK/T; one far from the aim is asked about."""
    model, power = written.get("planned-model", ""), written.get("planned-lens", "")
    lens = stock.lens(model)
    if lens is None or not power:
        if lens is not None:
            wanting = _("Planned lens: no power is written.")
        elif model:
            wanting = _("Planned lens: `{model}` is no lens of the shelf.").format(model=model)
        else:
            wanting = _("Planned lens: no lens model is written.")
        to_do.append(wanting)
        return f"{power or _('NOT WRITTEN')} {model}".strip()
    names = ("axial-length", "keratometry", "target", "eye", "biometry-eye")
    typed = {name: written[name] for name in names if name in written}
    typed |= {"formula": "srk-t", "a-constant": as_typed(lens.a_constant), "stock": power}
    try:
        found = worked(calculation("nearest-lenses"), typed, keeps_lines=False)
    except RefusedError as error:
        to_do += [_("Biometry: {what}.").format(what=each.what) for each in error.refusals]
        return f"{power} {lens.title}"
    left = found.results[1]
    assert left.value is not None
    aim, power = found.given[4].value, decimal(left.name.removesuffix("-leaves"))
    away = left.value - number(TARGET, typed["target"]).value
    if abs(away) > APART:
        differ = _("Plan and biometry differ: by SRK/T {power} D leaves {left}, aim {aim}.")
        to_do.append(differ.format(power=power, left=left.shown, aim=aim))
    planned = _("{power} D {lens}, leaves {left}")
    return planned.format(power=power, lens=lens.title, left=left.shown)


def _without_figure(found: tuple[Backup, ...]) -> Iterator[str]:
    yield from (
        _("Backup lens: {refused}.").format(refused=each.refused) for each in found if each.refused
    )


def _said(wanted: str, to_do: list[str]) -> bool:
    """Whether the same was said of the biometry already."""
    return any(each.partition(": ")[2] == wanted.partition(": ")[2] for each in to_do)


def _ceiling(written: Mapping[str, str], stock: Stock, to_do: list[str]) -> str:
    if "weight" not in written:
        to_do.append(_("Weight is not known."))
        return _("not worked: weight unknown")
    typed = {
        "weight": written["weight"],
        "already": written.get("lidocaine-planned", "0 mg"),
        "strength": "20 mg/mL",
        "limit": stock.lidocaine,
    }
    try:
        found = worked(calculation("lidocaine-ceiling"), typed, keeps_lines=False)
    except RefusedError as error:
        to_do += [_("Ceiling: {what}.").format(what=each.what) for each in error.refusals]
        return _("not worked")
    ceiling, left, volume = (each.shown for each in found.results)
    told = _("lidocaine {ceiling}: {volume} of 2 %")
    if ceiling != left:
        told = _("lidocaine {ceiling}, {left} left after the plan: {volume} of 2 %")
    return told.format(ceiling=ceiling, left=left, volume=volume)


def _chance(cases: tuple[CaseBrief, ...]) -> tuple[Decimal, Decimal] | None:
    """Return the chance of at least one rupture, or nothing where one case has no risk."""
    risks = [each.risk for each in cases if each.risk is not None]
    if len(risks) < len(cases) or not risks:
        return None
    none_low = none_high = Decimal(1)
    for each in risks:
        none_low *= 1 - each.low / 100
        none_high *= 1 - each.high / 100
    low, high = (round(100 * (1 - none), 1) for none in (none_low, none_high))
    return low, high


def range_told(low: Decimal, high: Decimal) -> str:
    """Return a range in per cent as it is read aloud.

    >>> range_told(Decimal("1.88"), Decimal("1.88")), range_told(Decimal("0.4"), Decimal(9))
    ('1.9 %', '0.4 to 9 %')
    """
    ends = dict.fromkeys(plain(round(each, 1)) for each in (low, high))
    return f"{_(' to ').join(ends)} %"
