"""Changes of what a unit sets in its sheet: whom it calls, what it takes, where that lies.

What the pathway left open and the unit set for the first time is procedural, as a choice is.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from chamberwise.engine.comparing.change import Change, Kind, Rating, Where
from chamberwise.engine.comparing.saying import EDITORIAL, PROCEDURAL, SAFETY, At
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.local import Local, Machine, SwitchedOff
from chamberwise.engine.model.step import PathwayId

UNSET = Local("", "", "", "", "", ())
NO_MACHINE = Machine("")
SET = N_("the unit set what was left open")
Said: TypeAlias = Mapping[str, str]


def changes_of_unit(old: Local | None, new: Local | None, pathway: PathwayId) -> Iterator[Change]:
    """Yield what two sheets over a pathway set otherwise; no sheet sets nothing."""
    was, now = old or UNSET, new or UNSET

    def each(kind: Kind, rating: Rating, why: str, before: Said, after: Said) -> Iterator[Change]:
        return _each(pathway, kind, rating, why, before, after)

    yield from At(Where(pathway, "unit")).value(
        Kind.UNIT, PROCEDURAL, was.unit, now.unit, _("it is the sheet of another unit")
    )
    yield from each(Kind.PHONE, SAFETY, _("help is called otherwise"), _phones(was), _phones(now))
    taken = _("something else is taken in hand")
    yield from each(Kind.PRODUCT, SAFETY, taken, _products(was), _products(now))
    lies = _("it lies elsewhere, or another amount is kept")
    yield from each(Kind.SHELF, PROCEDURAL, lies, _shelves(was), _shelves(now))
    walk = _("what is fetched from there is elsewhere, or takes another time")
    yield from each(Kind.PLACE, PROCEDURAL, walk, _places(was), _places(now))
    before, after = was.machine or NO_MACHINE, now.machine or NO_MACHINE
    meant = _("another page or button is meant")
    yield from each(Kind.MACHINE, SAFETY, meant, before.pages, after.pages)
    yield from At(Where(pathway, "machine")).value(
        Kind.MACHINE, PROCEDURAL, before.title, after.title, _("the machine is another")
    )
    yield from each(
        Kind.REASON, EDITORIAL, _("the unit's reason changed"), was.reasons, now.reasons
    )
    method = _("the unit came to its target otherwise")
    yield from each(Kind.TIME_TARGET, EDITORIAL, method, _methods(was), _methods(now))
    said = _("what the sheet says in another language changed")
    yield from At(Where(pathway, "translations")).value(
        Kind.UNIT, PROCEDURAL, was.translated, now.translated, said
    )
    yield from _switched_off(pathway, was, now)


def _each(
    pathway: PathwayId, kind: Kind, rating: Rating, why: str, was: Said, now: Said
) -> Iterator[Change]:
    for name in dict.fromkeys((*was, *now)):
        before, after = was.get(name, ""), now.get(name, "")
        is_first = not before and rating is SAFETY
        yield from At(Where(pathway, TABLES[kind], name)).value(
            kind,
            PROCEDURAL if is_first else rating,
            before,
            after,
            _(SET) if is_first else why,
        )


TABLES = {
    Kind.PHONE: "phones",
    Kind.PRODUCT: "products",
    Kind.SHELF: "products",
    Kind.PLACE: "places",
    Kind.MACHINE: "machine",
    Kind.REASON: "choices",
    Kind.TIME_TARGET: "time targets",
}
"""Where a sheet has it."""


def _phones(local: Local) -> Said:
    return {
        act: _("; otherwise ").join(
            filter(None, (f"{each.number}, {each.hours}", each.outside_hours))
        )
        for act, each in local.phones.items()
    }


def _products(local: Local) -> Said:
    return {item: each.product for item, each in local.products.items()}


def _shelves(local: Local) -> Said:
    return {
        item: ", ".join(filter(None, (each.place, each.shelf, each.stock)))
        for item, each in local.products.items()
    }


def _places(local: Local) -> Said:
    return {
        name: _("{title}, {walk} s").format(title=each.title, walk=each.walk)
        for name, each in local.places.items()
    }


def _methods(local: Local) -> Said:
    return {step: each.method for step, each in local.targets.items()}


def _switched_off(pathway: PathwayId, was: Local, now: Local) -> Iterator[Change]:
    for rule in dict.fromkeys((*was.switched_off, *now.switched_off)):
        before, after = (_off(each.switched_off.get(rule)) for each in (was, now))
        why = _("whether the unit is bound by the rule, or who decided so, changed")
        at = At(Where(pathway, "switched off", rule))
        yield from at.value(Kind.RULE, SAFETY, before, after, why)


def _off(told: SwitchedOff | None) -> str:
    return (
        _("switched off by {by}: {because}").format(by=told.by, because=told.because)
        if told
        else ""
    )
