"""Words that bear another name now: findings with their values, acts, duties, kit, sources, rules.

A word is told again by all it says, then by its title. Where its title too is another, it has to be
used at the very same places and be worded much alike: what is used in the place of another thing
is not that thing.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from dataclasses import replace
from difflib import SequenceMatcher
from typing import Any, TypeAlias

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Rating
from chamberwise.engine.comparing.names.named import Sort
from chamberwise.engine.comparing.names.uses import Uses
from chamberwise.engine.comparing.wording import reworded
from chamberwise.engine.model.words import Finding

ALIKE = 0.6
"""How much of two titles must be the same words for one to be the other, reworded."""

Twins: TypeAlias = dict[str, str]


def same_words(
    sort: Sort, old: Mapping[str, Any], new: Mapping[str, Any], used: tuple[Uses, Uses]
) -> Twins:
    """Return the words of one table whose name is gone, each with the name it bears now."""
    if old.keys() == new.keys():
        return {}

    def places(side: int) -> Callable[[Any], Hashable]:
        return lambda word: used[side].get((sort, word.id), frozenset())

    found: Twins = {}
    was_at, is_at = places(0), places(1)
    _pair(old, new, found, lambda w: (nameless(w), was_at(w)), lambda w: (nameless(w), is_at(w)))
    _pair(old, new, found, nameless, nameless)
    _pair(old, new, found, title, title)
    _pair(old, new, found, was_at, is_at, _is_worded_alike)
    return found


def same_values(old: Finding, new: Finding) -> Twins:
    """Return the values of a finding whose name is gone, each with the name it bears now."""
    before = {each.id: each for each in old.values}
    after = {each.id: each for each in new.values}
    found: Twins = {}
    _pair(before, after, found, nameless, nameless)
    _pair(before, after, found, title, title)
    return found


def nameless(word: Any) -> Hashable:
    """Return all that a word says, its name left aside."""
    without: Hashable = replace(word, id="")
    return without


def title(word: Any) -> str:
    """Return what a word is called where people read it."""
    for each in ("title", "label", "cite"):
        if hasattr(word, each):
            return " ".join(str(getattr(word, each)).split())
    raise TypeError(word)


def _pair(
    old: Mapping[str, Any],
    new: Mapping[str, Any],
    found: Twins,
    told_by: Callable[[Any], Hashable],
    is_told_by: Callable[[Any], Hashable],
    also: Callable[[Any, Any], bool] = lambda _one, _other: True,
) -> None:
    """Pair words that are alike in one respect, where one alone on either side is so."""
    gone = {name: told_by(each) for name, each in old.items() if _is_free(name, new, found)}
    come = {
        name: is_told_by(each)
        for name, each in new.items()
        if name not in old and name not in found.values()
    }
    for name, key in gone.items():
        twins = [each for each, there in come.items() if there == key]
        rivals = [each for each, there in gone.items() if there == key]
        if key and len(twins) == len(rivals) == 1 and also(old[name], new[twins[0]]):
            found[name] = twins[0]


def _is_free(name: str, new: Mapping[str, Any], found: Twins) -> bool:
    return name not in new and name not in found


def _is_worded_alike(one: Any, other: Any) -> bool:
    """Whether one title is the other in slightly other words on which nothing turns."""
    was, now = title(one), title(other)
    share = SequenceMatcher(None, was.split(), now.split(), autojunk=False).ratio()
    return share >= ALIKE and reworded(was, now, TextKind.INSTRUCTION).rating is not Rating.SAFETY
