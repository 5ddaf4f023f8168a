"""Steps of a printed content that say the same under another name now."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import NamedTuple

from chamberwise.engine.stamp.copies import KeptStep, Snapshot


def called_as_now(old: Snapshot, new: Snapshot) -> Snapshot:
    """Return the old content with the places of the new one, where only a step's name changed.

    A step is the same where exactly one that is gone and one that came say the same.
    """
    names = _names(old, new)
    if not names:
        return old
    return replace(
        old,
        steps={names.get(place, place): _called(step, names) for place, step in old.steps.items()},
    )


def _names(old: Snapshot, new: Snapshot) -> dict[str, str]:
    gone, come = _by_words(old, new), _by_words(new, old)
    return {
        places[0]: come[words][0]
        for words, places in gone.items()
        if len(places) == len(come.get(words, ())) == 1
    }


def _by_words(of: Snapshot, other: Snapshot) -> dict[tuple[object, ...], list[str]]:
    """Return the places that the other content does not have, by what is said there."""
    found: dict[tuple[object, ...], list[str]] = {}
    for place, step in of.steps.items():
        if place not in other.steps:
            found.setdefault(_words(step), []).append(place)
    return found


def _words(step: KeptStep) -> tuple[object, ...]:
    return step.says, step.lines, step.cautions, tuple(how for how, _to in step.ways)


def _called(step: KeptStep, names: Mapping[str, str]) -> KeptStep:
    ways = tuple((how, names.get(to, to)) for how, to in step.ways)
    return replace(step, ways=ways)


class NewNames(NamedTuple):
    """Places whose name changed, and places that say the same but for names of steps."""

    steps: tuple[str, ...]
    alike: frozenset[str]


def new_names(old: Snapshot, called: Snapshot, new: Snapshot) -> NewNames:
    """Return what only names of steps tell apart; `called` is the old content as it is called now.

    A kept digest holds the names a step leads to, so that nothing else of it can be compared.
    """
    turned = {place for place, step in called.steps.items() if old.steps.get(place) != step}
    alike = frozenset(
        place
        for place in turned & new.steps.keys()
        if replace(called.steps[place], rest="") == replace(new.steps[place], rest="")
    )
    return NewNames(tuple(each for each in called.steps if each not in old.steps), alike)
