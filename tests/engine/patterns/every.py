"""Every formula that ships, and every walk up to a length."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from chamberwise.engine.model.rule import Extent, Pattern
from chamberwise.engine.patterns.formula import Formula
from chamberwise.engine.patterns.machine import Machine, machine_of
from chamberwise.engine.patterns.published import SCOPED, UNSCOPED, formula_of

Letter = frozenset[str]
Kind = tuple[Pattern, Extent, int]
"""A pattern, its scope, and how often at most where that is asked."""

TIMES = (0, 1, 2, 3)

KINDS: tuple[Kind, ...] = (
    *((pattern, extent, 0) for pattern in SCOPED for extent in Extent),
    *((Pattern.BOUNDED_EXISTENCE, extent, times) for extent in Extent for times in TIMES),
    *((pattern, Extent.GLOBALLY, 0) for pattern in UNSCOPED),
)


def named(kind: Kind) -> str:
    pattern, extent, times = kind
    return f"{pattern}, {extent}" + (f", {times}" if pattern is Pattern.BOUNDED_EXISTENCE else "")


def formula(kind: Kind) -> Formula:
    return formula_of(*kind)


def machine(kind: Kind) -> Machine:
    return machine_of(formula(kind))


def letters(atoms: tuple[str, ...]) -> list[Letter]:
    """Return every set of atoms that a moment may show, in the order of a machine's letters."""
    return [
        frozenset(name for place, name in enumerate(atoms) if number >> place & 1)
        for number in range(1 << len(atoms))
    ]


def words(atoms: tuple[str, ...], longest: int) -> Iterator[tuple[Letter, ...]]:
    """Yield every walk of at most so many moments, the shortest first, the empty one too."""
    for length in range(longest + 1):
        yield from product(letters(atoms), repeat=length)


def accepts(machine: Machine, word: tuple[Letter, ...]) -> bool:
    numbers = [
        sum(1 << place for place, name in enumerate(machine.atoms) if name in letter)
        for letter in word
    ]
    return machine.run(numbers) in machine.good
