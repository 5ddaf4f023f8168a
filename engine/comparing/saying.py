"""Changes made out of two values: present on one side alone, or other on the one than the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import NamedTuple

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Change, Kind, Rating, Where
from chamberwise.engine.comparing.wording import ASIDE, reworded, weighs
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.words import Effects

SAFETY, PROCEDURAL, EDITORIAL = Rating.SAFETY, Rating.PROCEDURAL, Rating.EDITORIAL


class At(NamedTuple):
    """The place that changes are told of."""

    where: Where

    def part(self, name: str) -> At:
        """Return a part of the place."""
        part = f"{self.where.part}, {name}" if self.where.part else name
        return At(replace(self.where, part=part))

    def text(
        self, kind: Kind, reads: TextKind, was: str, now: str, grave: Rating = PROCEDURAL
    ) -> Iterator[Change]:
        """Yield the change of a text; one that is new or gone is at least as grave as told."""
        if was == now:
            return
        if was and now:
            rating, why = reworded(was, now, reads)
        else:
            heavy = "" if reads in ASIDE else weighs(was or now)
            rating, why = (SAFETY, heavy) if heavy else (grave, _("a text came or went"))
        yield Change(kind, rating, self.where, was, now, why)

    def value(
        self, kind: Kind, rating: Rating, was: object, now: object, why: str
    ) -> Iterator[Change]:
        """Yield the change of a value that is no text."""
        if was != now:
            yield Change(kind, rating, self.where, told(was), told(now), why)

    def evidence(self, was: tuple[str, ...], now: tuple[str, ...]) -> Iterator[Change]:
        """Yield what changed among sources: where some were merely added, no more rests on less."""
        is_less = not set(was) <= set(now)
        rating, why = PROCEDURAL, _("the evidence for it changed")
        if not is_less:
            rating, why = EDITORIAL, _("a source was added")
        yield from self.each(Kind.SOURCES, rating, was, now, why)

    def each(
        self, kind: Kind, rating: Rating, was: Iterable[str], now: Iterable[str], why: str
    ) -> Iterator[Change]:
        """Yield what is in one list of names and not in the other; their order counts for less."""
        before, after = tuple(was), tuple(now)
        kept = [name for name in before if name in after]
        order = [name for name in after if name in before]
        if kept != order:
            why_order = _("the same, in another order")
            yield Change(kind, EDITORIAL, self.where, told(before), told(after), why_order)
        for name in before:
            if name not in after:
                yield Change(kind, rating, self.where, name, "", why)
        for name in after:
            if name not in before:
                yield Change(kind, rating, self.where, "", name, why)


def told(value: object) -> str:
    """Return a value of the model in a few signs; nothing where there is none."""
    match value:
        case None | "" | ():
            return ""
        case bool():
            return _("yes") if value else _("no")
        case Condition():
            return condition(value)
        case Effects():
            return "; ".join(effects(value))
        case tuple():
            return ", ".join(told(each) for each in value)
    return str(value)


def condition(value: Condition) -> str:
    """Return a condition, e.g. `vitreous: none or behind; nucleus: all out`."""
    return "; ".join(f"{name}: {_(' or ').join(values)}" for name, values in value.terms)


def effects(value: Effects) -> tuple[str, ...]:
    """Return each thing that becomes known or stale; the order of values says nothing."""
    known = (
        _("makes known {name}: {values}").format(name=name, values=_(" or ").join(sorted(values)))
        for name, values in value.known
    )
    return (*known, *(_("makes stale {name}").format(name=name) for name in value.stale))
