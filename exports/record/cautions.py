"""Which cautions a step shows: its own, those of its acts, and those of steps passed silently."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from chamberwise.engine.meaning.advance import Decided, Passage, PassedOver
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Action, Caution, SignalWord

_Words: TypeAlias = tuple[SignalWord, str, str]
_SEVERITY = tuple(SignalWord)


def cautions_shown(library: Library, passage: Passage) -> tuple[tuple[Place, Caution], ...]:
    """Return the cautions to be shown at the end of a passage, the most severe first.

    A question passed over or a branch gone through shows nothing itself, so its cautions are
    carried to the next step that does. The same words are shown once.
    """
    passed = [silent.place for silent in passage.silent if isinstance(silent, PassedOver | Decided)]
    here = passage.state.place
    told = [(place, caution) for place in passed for caution in library.step(place).cautions]
    told += [(here, caution) for caution in cautions_at(library, here)]
    found: dict[_Words, tuple[Place, Caution]] = {}
    for place, caution in told:
        found.setdefault(_words(caution), (place, caution))
    return tuple(sorted(found.values(), key=lambda each: _SEVERITY.index(each[1].signal)))


def cautions_at(library: Library, place: Place) -> tuple[Caution, ...]:
    """Return a step's own cautions, then those of its pathway that guard an act it does."""
    found = {_words(caution): caution for caution in library.step(place).cautions}
    for caution in _guarding(library, place):
        found.setdefault(_words(caution), caution)
    return tuple(found.values())


def _guarding(library: Library, place: Place) -> Iterator[Caution]:
    step = library.step(place)
    if not isinstance(step, Action):
        return
    acts = {line.act for line in step.lines if line.act}
    for other in library.pathways[place.pathway].steps.values():
        yield from (caution for caution in other.cautions if caution.guards in acts)


def _words(caution: Caution) -> _Words:
    return caution.signal, caution.harm, caution.instead
