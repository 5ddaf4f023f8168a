"""What is to be done before the list starts: lenses that are missing, and people not named."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import groupby

from chamberwise.engine.brief.brief import Backup, CaseBrief
from chamberwise.engine.brief.case import Case, Head, Stock
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import plain, shown
from chamberwise.engine.working.optics.inputs import LENS
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.engine.working.scalars import number


def of_the_list(head: Head, stock: Stock) -> Iterator[str]:
    """Yield what nobody has said yet."""
    unset = {
        _("Who reads aloud"): head.reader,
        _("Who takes over"): head.takes_over,
        _("The stop word"): head.stop_word,
    }
    yield from (
        _("{what} is NOT SET LOCALLY.").format(what=what)
        for what, said in unset.items()
        if not said
    )
    if not stock.lenses:
        yield _("No shelf was given: no backup lens is worked.")
    if head.day and stock.counted > head.day:
        yield _("The shelf was counted on {counted}, after the day of the list.").format(
            counted=stock.counted
        )


def of_the_shelf(cases: Sequence[Case], briefs: Sequence[CaseBrief], stock: Stock) -> Iterator[str]:
    """Yield the planned lenses that run short, and the backups that are missing or shared."""
    yield from _planned(cases, stock)
    for each in briefs:
        missing = [own for own in each.backups if own.is_missing and not own.refused]
        if missing:
            yield _("Missing for case {label}: {missing}.").format(
                label=each.label, missing="; ".join(_wanted(missing))
            )
    yield from _shared(briefs)


def _wanted(missing: Sequence[Backup]) -> Iterator[str]:
    """Yield each kind of lens with the powers that are wanted of it."""
    for title, backups in groupby(missing, key=lambda each: each.title):
        powers = (
            f"{shown(each.exact or Decimal(0), 2)} D ({each.position.told})" for each in backups
        )
        yield _("{title} near {powers}").format(title=title, powers=", ".join(powers))


def _planned(cases: Sequence[Case], stock: Stock) -> Iterator[str]:
    asked: Counter[tuple[str, Decimal]] = Counter()
    labels: dict[tuple[str, Decimal], list[str]] = {}
    for case in cases:
        power = _power(case.written.get("planned-lens", ""))
        model = case.written.get("planned-model", "")
        if power is not None and stock.lens(model) is not None:
            asked[model, power] += 1
            labels.setdefault((model, power), []).append(case.label)
    for (model, power), count in asked.items():
        lens = stock.lens(model)
        there = lens.counts.get(power, 0) if lens else 0
        if lens is not None and there < count:
            yield (
                _(
                    "Planned lens {power} D, {lens}: {there} on the shelf, {count} needed for "
                    "{labels}."
                ).format(
                    power=plain(power),
                    lens=lens.title,
                    there=there,
                    count=count,
                    labels=_cases(labels[model, power]),
                )
            )


def _power(text: str) -> Decimal | None:
    try:
        return number(LENS, text).value
    except RefusedError:
        return None


def _shared(briefs: Sequence[CaseBrief]) -> Iterator[str]:
    """Yield the backup lenses of which there are fewer than cases that would come to them."""
    wanting: dict[tuple[str, Decimal, int], list[str]] = {}
    for each in briefs:
        nearest = {_nearest(backup) for backup in each.backups if not backup.is_missing}
        for found in sorted(nearest):
            wanting.setdefault(found, []).append(each.label)
    for (title, power, count), labels in wanting.items():
        if count < len(labels):
            yield _("{title} {power} D: {count} on the shelf, nearest for {labels}.").format(
                title=title, power=plain(power), count=count, labels=_cases(labels)
            )


def _nearest(backup: Backup) -> tuple[str, Decimal, int]:
    exact = backup.exact or Decimal(0)
    nearest = min(backup.shelf, key=lambda each: abs(each.power - exact))
    return backup.title, nearest.power, nearest.count


def _cases(labels: Sequence[str]) -> str:
    return (
        _("case {labels}").format(labels=labels[0])
        if len(labels) == 1
        else _("cases {labels}").format(labels=", ".join(labels))
    )
