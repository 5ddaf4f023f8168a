"""In which order the acts of one step must be done: where a rule speaks of both, as written.

Lines of different duties may be done at once, and what no rule speaks of may be done in any order.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import TypeAlias

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import Line, PathwayId
from chamberwise.engine.model.words import ActId

Pairs: TypeAlias = frozenset[tuple[ActId, ActId]]


@lru_cache(maxsize=64)
def bound_pairs(library: Library, pathway: PathwayId) -> Pairs:
    """Return, both ways round, the acts whose order a safety rule of a pathway speaks of."""
    rules: Mapping[str, Rule] = library.words(pathway).rules
    return frozenset(pair for rule in rules.values() for pair in _of(rule))


def _of(rule: Rule) -> Iterable[tuple[ActId, ActId]]:
    roles = [
        {act for each in any_of for act in each.acts}
        for any_of in (rule.of, rule.by, rule.scope.opens, rule.scope.closes)
    ]
    for one in roles:
        for other in roles:
            if one is not other:
                yield from ((first, then) for first in one for then in other)


def must_come_before(lines: Iterable[Line], pairs: Pairs) -> tuple[int, ...]:
    """Return, for each line, the bits of the lines that cannot be made up for once it is done."""
    found: list[int] = []
    above: list[Line] = []
    for line in lines:
        found.append(
            sum(
                1 << place
                for place, earlier in enumerate(above)
                if earlier.who == line.who and (earlier.act, line.act) in pairs
            )
        )
        above.append(line)
    return tuple(found)
