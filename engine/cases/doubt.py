"""Combinations declared impossible: whether they are looked at again before it is too late.

The declaration is taken at its word: once the answers given last show such a combination, one of
its findings has to be asked again before anything is done that cannot be undone. Taken for that
is an act that both disturbs the eye (something of it goes stale) and leaves it changed for
certain (something of it is known thereafter).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.cases.way import Acted, Asked
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import Impossible
from chamberwise.engine.model.words import About, ActId, FindingId, ValueId


@dataclass(frozen=True, slots=True)
class Doubt:
    """What a walk made of a combination declared impossible.

    `stands_at` is the question whose answer completed it (none where the answers never show it
    all at once), `looked_at` the one that asks again, `between` the acts done until then.
    """

    because: str
    stands_at: Place | None = None
    looked_at: Place | None = None
    between: tuple[ActId, ...] = ()
    too_late_for: Place | None = None
    """The first step before the second look with an act that cannot be undone."""

    @property
    def is_settled(self) -> bool:
        """Whether nothing that cannot be undone is done on the strength of the combination."""
        if self.stands_at is None:
            return True
        return self.looked_at is not None and self.too_late_for is None


def doubt(library: Library, declared: Impossible, happened: Sequence[Asked | Acted]) -> Doubt:
    """Return what a walk made of a combination that one declaration calls impossible."""
    begins = _stands(declared, happened)
    if begins is None:
        return Doubt(declared.because)
    names = {name for name, _ in declared.when.terms}
    between: list[Acted] = []
    looked_at = None
    for each in happened[begins + 1 :]:
        if isinstance(each, Acted):
            between.append(each)
        elif each.finding in names:
            looked_at = each.place
            break
    late = next((each.place for each in between if cannot_be_undone(library, each)), None)
    acts = tuple(each.act for each in between)
    return Doubt(declared.because, happened[begins].place, looked_at, acts, late)


def cannot_be_undone(library: Library, acted: Acted) -> bool:
    """Whether an act disturbs the eye and leaves it changed for certain."""
    words = library.words(acted.place.pathway)
    act = words.acts.get(acted.act)
    if act is None:
        return False
    effects = act.effects

    def of_the_eye(names: Sequence[FindingId]) -> bool:
        return any(words.findings[name].about is About.EYE for name in names)

    return of_the_eye(effects.stale) and of_the_eye([name for name, _ in effects.known])


def _stands(declared: Impossible, happened: Sequence[Asked | Acted]) -> int | None:
    """Return the number of the answer after which the last answers show the combination."""
    last: dict[FindingId, ValueId] = {}
    for number, each in enumerate(happened):
        if isinstance(each, Asked):
            last[each.finding] = each.value
            if all(last.get(name) in wanted for name, wanted in declared.when.terms):
                return number
    return None
