"""Changes of cautions: what is warned of, how strongly, and the right thing to do."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import SequenceMatcher

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Change, Kind
from chamberwise.engine.comparing.saying import PROCEDURAL, SAFETY, At
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Caution

ALIKE = 0.5


def changes_of_cautions(old: Sequence[Caution], new: Sequence[Caution], at: At) -> Iterator[Change]:
    """Yield the changes between the cautions of a step, what is gone first."""
    twin = _twins(old, new)
    for place, caution in enumerate(old):
        if place not in twin:
            why = _("a caution is gone")
            yield Change(Kind.CAUTION, SAFETY, at.where, told_caution(caution), "", why)
    was_of = {other: old[one] for one, other in twin.items()}
    for place, caution in enumerate(new):
        if place in was_of:
            yield from _caution(was_of[place], caution, at)
        else:
            why = _("a caution is new")
            yield Change(Kind.CAUTION, SAFETY, at.where, "", told_caution(caution), why)
    places = list(twin.values())
    if places != sorted(places):
        before = tuple(told_caution(old[one]) for one in twin)
        after = tuple(told_caution(new[other]) for other in sorted(places))
        why = _("cautions are shown in another order")
        yield from at.value(Kind.ORDER, PROCEDURAL, before, after, why)


def _twins(old: Sequence[Caution], new: Sequence[Caution]) -> dict[int, int]:
    found: dict[int, int] = {}
    for least in (1.0, ALIKE):
        for one, caution in enumerate(old):
            if one in found:
                continue
            free = [each for each in range(len(new)) if each not in found.values()]
            alike = [(_likeness(caution, new[each]), -each) for each in free]
            best = max(alike, default=(0.0, 0))
            if best[0] >= least:
                found[one] = -best[1]
    return dict(sorted(found.items()))


def _likeness(one: Caution, other: Caution) -> float:
    if one == other:
        return 1.0
    said, now_said = (f"{each.harm} {each.instead}".split() for each in (one, other))
    return min(0.99, SequenceMatcher(None, said, now_said, autojunk=False).ratio())


def _caution(old: Caution, new: Caution, at: At) -> Iterator[Change]:
    strength = _("it warns more or less strongly")
    yield from at.value(Kind.CAUTION, SAFETY, str(old.signal), str(new.signal), strength)
    yield from at.text(Kind.CAUTION, TextKind.CAUTION, old.harm, new.harm, SAFETY)
    yield from at.text(Kind.CAUTION, TextKind.INSTEAD, old.instead, new.instead, SAFETY)
    guards = _("it guards another act")
    yield from at.value(Kind.CAUTION, SAFETY, old.guards, new.guards, guards)
    yield from at.evidence(old.sources, new.sources)


def told_caution(caution: Caution) -> str:
    """Return a caution as text."""
    return f"{caution.signal}: {caution.harm} {caution.instead}"
